"""The tables that the science can work out: each function gives the rows of one CSV.

``python -m saltline_pages.computed_tables`` writes them again; a test compares.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Iterable
from pathlib import Path

from saltline.bead_mass import bead_mass_mg, beads_per_g
from saltline.evaporation import wet_cylinder
from saltline.flush_plan import flush_plan
from saltline.granules import soak_minutes
from saltline.hardness import MG_L_CACO3, hardness
from saltline.medium import medium_rise
from saltline.meter import factor_iso_7888, factor_linear, scale_from_ec
from saltline.mixing import full_mixing
from saltline.mornings import wash_by_wash
from saltline.priors import pot_at, pot_of
from saltline.products import CA_PER_CAO, K_PER_K2O, MG_PER_MGO, P_PER_P2O5, PRODUCTS
from saltline.recipe import mix_ms_cm
from saltline.release import ENERGIES_KJ_MOL, prill_release, rate_factor
from saltline.salt_band import POT_AIR
from saltline.sampling import bad_still_possible, mean_half_width, sample
from saltline.sieve import OPENINGS_MM, sieve
from saltline.strength import feed_dose
from saltline.water import density, saturation_pressure, surface_tension, viscosity
from saltline_pages.tables import Table, load_all

Cell = float | str | None | tuple[float, float]  # a pair is a range
Row = tuple[Cell, ...]


def scale_conversions() -> Iterable[Row]:
    for ec in (0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1.0, 1.2, 1.413, 1.5, 2.0, 2.5, 3.0, 4.0):
        scales = ("ms_cm", "us_cm", "ppm500", "ppm640", "ppm700", "cf")
        yield tuple(scale_from_ec(ec_ms_cm=ec, scale=scale) for scale in scales)


def temperature_factors() -> Iterable[Row]:
    for degrees in range(36):
        c = float(degrees)
        yield c, factor_iso_7888(sample_c=c), factor_linear(sample_c=c)


def hardness_units() -> Iterable[Row]:
    names = {
        "mg_l_caco3": "1 mg/L as calcium carbonate",
        "meq_l": "1 meq/L",
        "mmol_l": "1 mmol/L",
        "german": "1 German degree (10 mg/L calcium oxide)",
        "french": "1 French degree",
        "clark": "1 Clark or English degree (a grain in an imperial gallon)",
        "grain_us_gal": "1 grain in a US gallon",
    }
    for unit in MG_L_CACO3:
        one = hardness(value=1.0, unit=unit)
        yield names[unit], one.mg_l_caco3, one.mmol_l, one.meq_l, one.german


def oxide_factors() -> Iterable[Row]:
    yield "P₂O₅", "P", P_PER_P2O5, 1.0 / P_PER_P2O5
    yield "K₂O", "K", K_PER_K2O, 1.0 / K_PER_K2O
    yield "CaO", "Ca", CA_PER_CAO, 1.0 / CA_PER_CAO
    yield "MgO", "Mg", MG_PER_MGO, 1.0 / MG_PER_MGO


def ec_per_100_ppm_n() -> Iterable[Row]:
    for product in PRODUCTS:
        nitrogen = product.elements[0]
        if product.ions is None or nitrogen == 0.0:
            continue
        dose = feed_dose(
            n_percent=nitrogen / 10.0, target_n_ppm=100.0, batch_l=1.0, teaspoon_g=6.0, injector=1.0
        ).dose_g_l
        label = product.label[0].upper() + product.label[1:]
        yield label, dose, mix_ms_cm(products=[product.id], grams_per_l=[dose])


def water_properties() -> Iterable[Row]:
    for degrees in range(5, 41, 5):
        c = float(degrees)
        yield (
            c,
            1e3 * surface_tension(water_c=c),
            1e6 * viscosity(water_c=c),
            density(water_c=c),
            1e-3 * saturation_pressure(water_c=c),
        )


def rise_by_grain() -> Iterable[Row]:
    for grain in (0.25, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0):
        rise = medium_rise(
            grain_mm=grain, pot_height_mm=100.0, water_level_mm=0.0, top_damp_24h="unknown"
        )
        yield grain, rise.damp_rise_mm, rise.saturated_rise_mm


def evaporation_by_room() -> Iterable[Row]:
    rooms = (
        ("Still room", 22.0, 60.0, 0.0, 5.0),
        ("Room with slight draughts", 22.0, 60.0, 0.05, 5.0),
        ("Usual room", 22.0, 60.0, 0.1, 5.0),
        ("Usual room, thin root", 22.0, 60.0, 0.1, 4.0),
        ("Usual room, thick root", 22.0, 60.0, 0.1, 8.0),
        ("Dry heated room", 20.0, 40.0, 0.1, 5.0),
        ("Damp greenhouse", 25.0, 80.0, 0.1, 5.0),
        ("Fan across the bench", 22.0, 60.0, 0.3, 5.0),
        ("Strong fan, drier air", 25.0, 50.0, 0.5, 6.0),
    )
    for room, air_c, humidity, wind, root in rooms:
        free = wet_cylinder(
            air_c=air_c, humidity_percent=humidity, air_speed_m_s=wind, diameter_mm=root
        ).evaporation_mm_day
        yield room, air_c, humidity, wind, root, free, (POT_AIR[0] * free, POT_AIR[1] * free)


def soak_minutes_by_granule() -> Iterable[Row]:
    brim, bucket = 3.0, 9.0
    for grain in (3.0, 4.0, 6.0, 8.0, 12.0, 16.0):
        cells: list[Cell] = [grain]
        for share, bath in ((0.5, brim), (0.9, brim), (0.9, bucket)):
            soak = soak_minutes(grain_mm=grain, share=share, bath_ratio=bath)
            cells.append((soak.minutes_low, soak.minutes_high))
        yield tuple(cells)


def pours_by_granule() -> Iterable[Row]:
    """A 1 L pot; a far target, so that all nine pours of three mornings are worked out."""
    plans = [
        flush_plan(
            stage="growing", kind="unknown", pot_ms_cm=30.0, rinse_ms_cm=0.0, target_ms_cm=0.1,
            feed_ms_cm=None, pot_l=1.0, water_held_ml=None, grain_mm=grain, way="pours",
            medium="granules", live_prills="no", softened="no",
        )
        for grain in (4.0, 8.0, 16.0)
    ]  # fmt: skip
    for at in range(9):
        shares = [(plan.left_each_share_low[at], plan.left_each_share_high[at]) for plan in plans]
        yield float(at + 1), *((100.0 * low, 100.0 * high) for low, high in shares)


def pot_assumptions() -> Iterable[Row]:
    """Each assumption from its 10 to its 90 %, the others in the middle: an 8 mm, 1 L pot."""
    names = (
        ("How fast salt spreads inside a granule", "diffusivity", 1.0, "e-9 m²/s"),
        ("Water round the granules, of all water held", "film_share", 100.0, " %"),
        ("Water the drained pot keeps, of its volume", "water_share", 100.0, " %"),
        ("A pour that runs straight past", "by_pass", 100.0, " %"),
        ("Water that fills it to the brim, of its volume", "brim_share", 100.0, " %"),
    )
    for at, (label, name, factor, unit) in enumerate(names):
        ends = [pot_at([place if k == at else 0.5 for k in range(5)]) for place in (0.1, 0.9)]
        low, high = (f"{factor * getattr(end, name):.2g}" for end in ends)
        cells: list[list[float]] = [[], [], []]
        for end in ends:
            brim = 1000.0 * end.brim_share
            pot, soaked, poured = (
                pot_of(draw=end, grain_mm=8.0, pot_l=1.0, weighed_ml=None) for _ in range(3)
            )
            cells[0].append(1.0 / pot.soak(ml=brim, minutes=10.0))
            about = {"washes": 3, "a_morning": 3}
            *_, left = wash_by_wash(soaked, **about, ml=brim, soak_min=10.0)
            cells[1].append(100.0 * left)
            *_, left = wash_by_wash(poured, **about, ml=150.0, soak_min=None)
            cells[2].append(100.0 * left)
        yield label, f"{low}-{high}{unit}", *((min(cell), max(cell)) for cell in cells)


def full_mixing_water() -> Iterable[Row]:
    for times in (2.0, 4.0, 5.0, 10.0, 20.0):
        ways = [
            full_mixing(times_down=times, water_held_ml=1.0, rinses=rinses)
            for rinses in (1, 2, 3, 4, 10)
        ]
        yield times, *(way.water_ml for way in ways), ways[0].trickle_ml


def release_by_temperature() -> Iterable[Row]:
    low, high = ENERGIES_KJ_MOL
    for degrees in (10, 15, 18, 20, 21, 23, 25, 28, 30, 32, 35):
        c = float(degrees)
        rates = sorted(rate_factor(at_c=c, rated_c=21.0, energy_kj_mol=ea) for ea in (low, high))
        warm = prill_release(rated_days=180.0, rated_c=25.0, mean_c=c, day=1.0)
        cool = prill_release(rated_days=180.0, rated_c=21.0, mean_c=c, day=1.0)
        yield (
            c,
            (rates[0], rates[1]),
            (cool.end_day_low, cool.end_day_high),
            (warm.end_day_low, warm.end_day_high),
        )


def bead_mass() -> Iterable[Row]:
    for size in (1.0, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0):
        yield size, bead_mass_mg(diameter_mm=size), beads_per_g(diameter_mm=size)


def sieve_apertures() -> Iterable[Row]:
    for at, opening in enumerate(OPENINGS_MM):
        if 0.5 <= opening <= 16.0:
            yield f"{opening:g}", "R20/3, the usual set" if at % 2 == 0 else "R40/3, in between"


def sieve_choice() -> Iterable[Row]:
    pairs = ((2.0, 4.0, 2.0), (2.0, 4.0, 4.0), (2.0, 3.5, 4.0), (2.0, 4.0, 6.0), (2.0, 4.0, 8.0))
    for least, most, grain in pairs:
        mesh = sieve(prill_min_mm=least, prill_max_mm=most, grain_min_mm=grain)
        yield (least, most), grain, mesh.aperture_mm, mesh.margin_mm, mesh.dust_mm


def sample_sizes() -> Iterable[Row]:
    for spread in (10.0, 15.0, 20.0, 25.0, 30.0, 40.0):
        half = mean_half_width(spread_percent=spread, read=5, pots=None, sure_percent=95.0)
        reads = [
            sample(
                pots=pots,
                spread_percent=spread,
                within_percent=20.0,
                bad_pots=None,
                sure_percent=95.0,
            ).sample_for_mean
            for pots in (10, 20, 60, 300)
        ]
        yield spread, half, *map(float, reads)


def bad_pots() -> Iterable[Row]:
    for pots, bad in ((12, 1), (12, 2), (20, 2), (60, 6), (300, 30)):
        reads = sample(
            pots=pots, spread_percent=25.0, within_percent=20.0, bad_pots=bad, sure_percent=95.0
        ).sample_to_find
        missed = float(bad_still_possible(read=5, pots=pots))
        yield float(pots), float(bad), None if reads is None else float(reads), missed


GENERATORS: dict[str, Callable[[], Iterable[Row]]] = {
    "scale-conversions": scale_conversions,
    "temperature-factors": temperature_factors,
    "hardness-units": hardness_units,
    "oxide-factors": oxide_factors,
    "ec-per-100-ppm-n": ec_per_100_ppm_n,
    "water-properties": water_properties,
    "rise-by-grain": rise_by_grain,
    "evaporation-by-room": evaporation_by_room,
    "soak-minutes": soak_minutes_by_granule,
    "pours-by-granule": pours_by_granule,
    "pot-assumptions": pot_assumptions,
    "full-mixing": full_mixing_water,
    "release-by-temperature": release_by_temperature,
    "bead-mass": bead_mass,
    "sieve-apertures": sieve_apertures,
    "sieve-choice": sieve_choice,
    "sample-sizes": sample_sizes,
    "bad-pots": bad_pots,
}


def csv_text(table: Table) -> str:
    """The CSV of a computed table as the science gives it now."""
    file = io.StringIO()
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow(column.name for column in table.columns)
    for row in GENERATORS[table.name]():
        decimals = [column.decimals for column in table.columns]
        writer.writerow(_written(*cell) for cell in zip(row, decimals, strict=True))
    return file.getvalue()


def _written(cell: Cell, decimals: int | None) -> str:
    if cell is None or isinstance(cell, str):
        return cell or ""
    if isinstance(cell, tuple):
        return "-".join(dict.fromkeys(_written(end, decimals) for end in cell))
    if decimals is None:
        raise ValueError("a computed column needs its decimals")
    return f"{cell:.{decimals}f}"


def files() -> dict[Path, str]:
    """The CSV of every computed table as it should stand."""
    folder = Path(__file__).resolve().parent.parent.parent / "docs" / "tables"
    tables = load_all(folder)
    return {
        folder / f"{name}.csv": csv_text(table) for name, table in tables.items() if table.computed
    }
