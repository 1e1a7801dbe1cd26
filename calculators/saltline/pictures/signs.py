"""The signs of the damage key as line drawings, 64 by 64, few strokes each.

Harm is dark, hatched or dotted as well as coloured; colours and widths are classes of
docs/assets/css/key.css. Nothing here runs in the page: the drawings stand in it from the build.
"""

from __future__ import annotations

from saltline.damage_signs import SIGNS


def dots(*places: tuple[int, int]) -> str:
    """Dots (of the class `grain`) as path data."""
    return "".join(f"M{x} {y}v.1" for x, y in places)


def rings(radius: int, *centres: tuple[int, int]) -> str:
    """Circles as path data."""
    half = f"a{radius} {radius} 0 1 0 "
    return "".join(
        f"M{x - radius} {y}{half}{2 * radius} 0{half}{-2 * radius} 0" for x, y in centres
    )


def drops(*tops: tuple[int, int]) -> str:
    """Drops of water, hanging from these points, as path data."""
    return "".join(f"M{x} {y}c-3 5-4 7-4 9a4 4 0 0 0 8 0c0-2-1-4-4-9z" for x, y in tops)


# Things that several drawings show.
ROOT = "M25 4V48Q25 59 32 59Q39 59 39 48V4"
TWO_ROOTS = "M14 3V44M24 3V44M40 3V44M50 3V44"
POT = "M8 20H56M11 20L17 59H47L53 20"
HIGH_POT = "M13 10H51M16 10L21 40H43L48 10"
LEAF = "M6 56C8 28 26 8 58 6C58 36 38 56 6 56Z"
BULB = "M26 44C14 36 18 14 32 6C46 14 50 36 38 44Z"
WRINKLES = "M27 38C23 30 25 20 30 14M37 38C41 30 39 20 34 14M32 40V18"
SMALL_POTS = (
    "M4 30H20M6 30L8 48H16L18 30M24 30H40M26 30L28 48H36L38 30M44 30H60M46 30L48 48H56L58 30"
)
MERCURY = "M46 10V42A8 8 0 1 0 54 42V10A4 4 0 0 0 46 10Z"

# Class and path of each stroke, in the order of drawing.
STROKES: dict[str, tuple[tuple[str, str], ...]] = {
    "dark_band_above_medium": (
        ("ink", TWO_ROOTS),
        ("hurt-full", "M14 30H24V41H14ZM40 30H50V41H40Z"),
        ("thin", rings(5, (8, 50), (20, 49), (32, 50), (44, 49), (56, 50))),
        ("thin dash", "M2 30H62M2 41H62"),
    ),
    "tips_dead": (("ink", ROOT), ("hurt-full", "M25 42V48Q25 59 32 59Q39 59 39 48V42Z")),
    "brown_inside_pot": (
        ("ink", POT),
        ("ink", "M28 3V20M38 3V20"),
        ("hurt", "M28 22C24 32 30 38 25 52M38 22C42 32 34 40 40 52M33 22V46"),
    ),
    "worst_at_bottom": (
        ("ink", POT),
        ("thin", "M26 22V42M33 22V42M40 22V42"),
        ("hurt", "M15 44L22 57M21 44L28 57M27 44L34 57M33 44L40 57M39 44L46 57"),
        ("thin dash", "M4 43H60"),
    ),
    "air_roots_dry_back": (
        ("ink", "M14 32H50M17 32L22 59H42L47 32"),
        ("ink", "M32 32V14C32 8 24 6 18 10M32 14C34 8 42 6 47 11"),
        ("hurt dash", "M18 10C8 16 7 26 7 40M47 11C56 16 57 26 57 40"),
    ),
    "soft_skin_slides": (
        ("ink", "M23 3V20Q27 25 32 20Q37 25 41 20V3"),
        ("hurt", "M32 20V42"),
        ("ink", "M23 44Q28 38 32 43Q37 38 41 44V52Q41 60 32 60Q23 60 23 52Z"),
        ("thin", "M12 30V46M8 42L12 47L16 42"),
    ),
    "hollow_papery": (
        ("ink", "M18 12A14 7 0 1 0 46 12A14 7 0 1 0 18 12"),
        ("ink", "M18 12C20 26 16 38 20 60M46 12C44 26 48 38 44 60"),
        ("thin", "M24 12A8 3 0 1 0 40 12A8 3 0 1 0 24 12"),
        ("hurt", "M26 26C28 36 25 46 27 60M36 26C34 38 38 46 36 60"),
    ),
    "firm_dark": (
        ("hurt-full", "M25 4V48Q25 59 32 59Q39 59 39 48V4Z"),
        ("ink", "M3 30H19M13 24L19 30L13 36M61 30H45M51 24L45 30L51 36"),
    ),
    "sour_smell": (
        ("ink", "M14 34H50M17 34L22 59H42L47 34"),
        ("hurt", "M22 27C16 21 28 16 22 8M32 27C26 21 38 16 32 8M42 27C36 21 48 16 42 8"),
    ),
    "crust_dissolves": (
        ("ink", "M4 36H42C42 48 36 54 23 54C10 54 4 48 4 36ZM42 38L60 28"),
        ("water", "M8 42H38"),
        ("grain", dots((18, 8), (26, 6), (22, 15), (30, 14), (20, 24), (28, 25))),
        ("grain", dots((18, 48), (28, 48))),
        ("thin", "M52 20V4M47 9L52 4L57 9"),
    ),
    "crust_fizzes": (
        ("water", drops((32, 4))),
        ("hurt-full", "M14 58L20 46L30 42L42 46L50 58Z"),
        ("thin", rings(4, (18, 36), (33, 31)) + rings(3, (47, 37), (51, 26), (15, 24))),
    ),
    "rested_drip_high": (
        ("ink", HIGH_POT),
        ("water", drops((32, 45))),
        ("hurt", "M54 60V42M48 48L54 42L60 48"),
        ("grain", dots((8, 46), (14, 54), (6, 58), (16, 46))),
    ),
    "rested_drip_low": (
        ("ink", HIGH_POT),
        ("water", drops((32, 45))),
        ("ink", "M54 42V60M48 54L54 60L60 54"),
    ),
    "many_pots_same_feed": (
        ("ink", SMALL_POTS),
        ("hurt-full", rings(4, (12, 18), (32, 18), (52, 18))),
        ("thin", "M12 22V30M32 22V30M52 22V30"),
    ),
    "one_pot_only": (
        ("ink", SMALL_POTS),
        ("hurt-full", rings(4, (32, 18))),
        ("thin", "M32 22V30M12 30V16C12 10 8 10 8 16M12 16C12 10 16 10 16 16"),
        ("thin", "M52 30V16C52 10 48 10 48 16M52 16C52 10 56 10 56 16"),
    ),
    "cold_night": (
        ("ink", "M30 8A16 16 0 1 0 34 34A13 13 0 0 1 30 8Z"),
        ("ink", MERCURY),
        ("full", rings(4, (50, 47)) + "M49 42H51V46H49Z"),
        ("thin", "M16 44V60M9 48L23 56M23 48L9 56"),
    ),
    "sunk_pits": (
        ("ink", LEAF),
        ("hurt", "M19 42C19 50 30 50 30 42M30 29C30 37 41 37 41 29M40 16C40 23 49 23 49 16"),
        ("thin", "M17 41H32M28 28H43M38 15H51"),
    ),
    "hot_day": (
        ("ink", rings(10, (20, 24)) + "M20 4V9M20 39V44M1 24H5M35 24H39"),
        ("ink", "M7 11L10 14M33 11L30 14M7 37L10 34M33 37L30 34"),
        ("ink", MERCURY),
        ("hurt-full", rings(4, (50, 48)) + "M48 14H52V48H48Z"),
    ),
    "tips_bitten": (
        ("ink", "M14 4V34A6 6 0 0 1 21 41A6 6 0 0 1 28 48V4"),
        ("hurt", "M56 45a6 6 0 1 0-6 6a3 3 0 1 0-3-4M36 57H58C62 52 61 45 58 44L55 38M58 44L62 39"),
        ("grain", dots((6, 57), (15, 57), (24, 57))),
    ),
    "purple_ring": (
        ("ink", rings(24, (32, 32))),
        ("hurt wide", rings(14, (32, 32))),
    ),
    "black_spreading": (
        ("ink", "M26 52C14 42 18 20 32 14C46 20 50 42 38 52"),
        ("ink", "M32 14C30 8 24 4 16 4M32 14C36 8 42 5 48 5"),
        ("hurt-full", "M18 40c6-6 10 0 15-4c5-3 9 2 13 2c3 10-3 22-14 22c-12 0-17-10-14-20"),
        ("thin", "M12 40L4 36M4 36L10 34M4 36L7 42M52 40L60 36M60 36L54 34M60 36L57 42"),
    ),
    "leaf_tips_dry": (
        ("ink", LEAF), ("thin", "M6 56L34 30"),
        ("hurt-full", "M34 14C41 9 49 6 58 6C58 15 56 23 52 30Z"),
    ),
    "oldest_leaves_yellow": (
        ("ink", "M28 60C18 50 20 34 32 28C44 34 46 50 36 60Z"),
        ("ink", "M32 28C34 16 44 6 58 6C56 18 46 28 32 28Z"),
        ("hurt", "M31 29C20 28 8 36 6 52C16 50 28 44 31 29Z"),
        ("grain", dots((14, 42), (20, 38), (18, 45), (25, 34), (12, 48))),
    ),
    "shrivelled_wet": (
        ("ink", BULB),
        ("hurt", WRINKLES),
        ("water", drops((14, 48), (32, 48), (50, 48))),
    ),
    "shrivelled_dry": (
        ("ink", BULB),
        ("hurt", WRINKLES),
        ("water thin", drops((32, 48))),
        ("ink", "M20 48L44 62M44 48L20 62"),
    ),
    "repotted_lately": (
        ("ink", "M3 32H23M5 32L9 56H17L21 32M41 32H61M43 32L47 56H55L59 32"),
        ("thin", "M13 26C18 8 46 8 51 26M45 20L51 27L56 20"),
        ("grain", dots((48, 40), (54, 40), (51, 47), (49, 52), (54, 52))),
    ),
    "fed_from_below": (
        ("ink", "M16 6H48M19 6L24 48H40L45 6"),
        ("ink", "M6 44L11 58H53L58 44"), ("water", "M10 50H21M43 50H54"),
        ("water thin", "M28 40V22M24 27L28 21L32 27M37 40V22M33 27L37 21L41 27"),
    ),
    "live_prills": (
        ("ink", POT),
        ("hurt", rings(4, (20, 13), (32, 11), (44, 13), (28, 30), (40, 38))),
        ("grain", dots((20, 42), (26, 48), (36, 50))),
    ),
    "few_roots": (
        ("ink", POT),
        ("ink", "M32 4V20"),
        ("hurt", "M30 20C29 28 26 30 25 36M34 20C35 26 37 28 38 32"),
    ),
    "softened_water": (
        ("ink", "M4 14H30V20C30 24 34 26 34 32M44 32C44 20 40 14 34 8M4 8V26M22 14V6M14 6H30"),
        ("water", drops((39, 40))),
        ("hurt", "M6 40H26V60H6Z"),
        ("grain", dots((11, 46), (20, 46), (16, 51), (11, 55), (20, 56))),
    ),
    "unfed_and_flushed": (
        ("ink", "M12 24H52M15 24L20 50H44L49 24"),
        ("water", "M24 4V18M32 4V18M40 4V18M24 54V62M32 54V62M40 54V62"),
        ("hurt", "M28 32L36 42M36 32L28 42"),
    ),
    "roots_branch_behind_tip": (
        ("ink", "M27 4V46M37 4V46M27 26C18 28 12 34 10 42"),
        ("ink", "M37 30C46 32 52 38 54 46M27 34C22 37 20 42 19 48"),
        ("hurt-full", "M27 46V52Q27 60 32 60Q37 60 37 52V46Z"),
    ),
    "stippled_leaves": (
        ("ink", LEAF),
        ("thin", "M6 56L40 24"),
        ("grain", dots((16, 44), (20, 36), (26, 28), (24, 46), (32, 40), (34, 22), (42, 16))),
        ("grain", dots((40, 34), (48, 24), (30, 50), (46, 40), (50, 14), (40, 46))),
    ),
    "webbing": (
        ("ink", "M32 62C26 44 14 28 3 24C4 40 16 56 32 62Z"),
        ("ink", "M32 62C38 44 50 28 61 24C60 40 48 56 32 62Z"),
        ("hurt", "M10 27L54 27M17 33L47 33M24 42L40 42M32 8L32 42M3 24L32 8L61 24"),
    ),
    "soft_leaf_spots": (
        ("ink", LEAF),
        ("hurt-full", "M17 44C16 36 26 36 27 41C30 46 20 52 17 44Z"),
        ("hurt-full", "M32 28C30 19 44 17 45 24C47 32 35 36 32 28Z"),
        ("water", drops((51, 38))),
    ),
    "old_roots_only": (
        ("ink", "M4 16H60M10 16C8 8 16 4 18 12M44 16C40 4 54 2 54 14"),
        ("hurt dash", "M10 16C12 30 6 42 9 58M18 16C20 30 15 42 19 58M27 16C30 30 24 40 28 54"),
        ("ink", "M42 16C44 28 40 38 43 48M51 16C54 28 49 36 52 44"),
        ("water", "M43 48V54M52 44V50"),
    ),
}  # fmt: skip


def sketch(sign: str) -> str:
    """The drawing of one sign as SVG text; its title says in words what to look for."""
    title = next(each.label for each in SIGNS if each.id == sign)
    strokes = "".join(f'<path class="{kind}" d="{path}"/>' for kind, path in STROKES[sign])
    return f'<svg viewBox="0 0 64 64"><title>{title}</title>{strokes}</svg>'
