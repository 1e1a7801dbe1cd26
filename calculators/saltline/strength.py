"""How strong a feed is: from its label, from the spoon, and from the pen."""

from __future__ import annotations

from typing import NamedTuple

from saltline.errors import BadInput
from saltline.products import CA_PER_CAO, K_PER_K2O, MG_PER_MGO, P_PER_P2O5
from saltline.units import G_PER_OZ, ML_PER_US_GAL

MG_L_PER_PERCENT_G_L = 10.0  # 1 g/L of a feed with 1 % of a nutrient
TEASPOON_SPREAD = 0.20  # share by which a level spoon differs; docs/sources.json: saltline-notes
SCALE_STEP_G = 1.0  # what a kitchen scale shows
SMALL_DOSE_G = 5.0 * SCALE_STEP_G
STOCK_AT_LEAST_G_L = 10.0  # no feed for plants is this strong: somebody dosed the stock

# Nitrogen [mg/L] up to which the Phalaenopsis trial stayed sound, and at which it was harmed
# (docs/sources.json: wur-phalaenopsis-2014).
N_PPM_TRIAL_TOP = 280.0

# What a litre of water dissolves of potassium nitrate, the least soluble salt of most feeds [g]:
# at 0 C measured (docs/sources.json: iupac-nist-66), at 10 C from tables recalled (crc-solubility),
# at 20 C as growers are told (dpird-stock). The last: one 20 % N feed's own limit, 4 lb a US gallon
# (msu-concentration).
KNO3_G_L_0_C = 126.0
LABEL_LIMIT_G_L = 479.0

# The band of conductivity per 100 mg/L N that nitrogen salts span, ammonium nitrate to potassium
# nitrate [mS/cm] (docs/sources.json: saltline-notes, feed 2).
EC_PER_100_N_LEAST = 0.498
EC_PER_100_N_MOST = 0.974
EC_ERROR = 0.10  # a mix on a pocket pen; docs/sources.json: saltline-notes
PEN_ERROR = 0.02  # share of each reading; common practice
FLAG_PERCENT = 15.0  # pen against label: beyond this look for a cause (saltline-notes)

SMALL_DOSE = (
    "A kitchen scale that shows whole grams may be half a gram out, a tenth or more of a dose "
    "under 5 g. Weigh a bigger batch, or use a scale that shows 0.1 g."
)
STRONG = (
    "More than 280 ppm nitrogen: in a Phalaenopsis trial 196 to 280 did well, and 364 brought "
    "diseased spikes and fewer roots."
)


class LabelStrength(NamedTuple):
    """The answer of `label_strength`: elements in the mixed feed [mg/L]."""

    n_ppm: float
    p_ppm: float
    k_ppm: float
    ca_ppm: float
    mg_ppm: float
    warnings: tuple[str, ...]


class FeedDose(NamedTuple):
    """The answer of `feed_dose`: what to weigh, what to spoon, what a stock holds."""

    dose_g: float
    teaspoons_low: float
    teaspoons_high: float
    dose_g_l: float
    oz_per_100_us_gal: float
    stock_g_l: float
    warnings: tuple[str, ...]


class FeedCheck(NamedTuple):
    """The answer of `feed_check`: nitrogen by the pen [mg/L], and the pen against the label."""

    n_ppm: float
    n_ppm_low: float
    n_ppm_high: float
    expected_ms_cm_low: float | None
    expected_ms_cm_high: float | None
    off_percent: float | None
    warnings: tuple[str, ...]


def label_strength(
    *,
    n_percent: float,
    p2o5_percent: float,
    k2o_percent: float,
    cao_percent: float,
    mgo_percent: float,
    dose_g_l: float,
) -> LabelStrength:
    """Elements in a feed mixed from a labelled product.

    Equation:
        C = 10 g %; P = 0.43643 P2O5, K = 0.83015 K2O, Ca = 0.71470 CaO, Mg = 0.60304 MgO.
    Arguments:
        n_percent: nitrogen on the label [% by weight].
        p2o5_percent: phosphate on the label [%].
        k2o_percent: potash on the label [%].
        cao_percent: calcium oxide on the label [%].
        mgo_percent: magnesium oxide on the label [%].
        dose_g_l: product in each litre of finished feed [g/L].
    Returns:
        LabelStrength: N, P, K, Ca, Mg as elements [mg/L, which is ppm in a dilute feed].
    Valid for:
        Feeds up to 10 g/L, where a litre of feed is a litre of water.
    Error:
        The label's own: guaranteed figures are minima, usually within some percent.
    Raises:
        BadInput: percentages that add up to more than 100.
    Sources:
        iupac-masses; wang-2000 (phosphorus); saltline-notes, feed 1.
    """
    if n_percent + p2o5_percent + k2o_percent + cao_percent + mgo_percent > 100.0:
        raise BadInput("n_percent", "and the other percentages must come to 100 % or less together")
    n_ppm = MG_L_PER_PERCENT_G_L * n_percent * dose_g_l
    warnings = []
    if dose_g_l > STOCK_AT_LEAST_G_L:
        warnings.append(
            "More than 10 g in a litre is a stock, not a feed. Give the grams in a litre of what "
            "reaches the pot."
        )
    elif n_ppm > N_PPM_TRIAL_TOP:
        warnings.append(STRONG)
    if p2o5_percent > n_percent:
        warnings.append(
            "More phosphate than nitrogen: a bloom feed. In a trial Phalaenopsis on such a feed "
            "carried 15 to 19 flowers, those on an even feed 24."
        )
    return LabelStrength(
        n_ppm=n_ppm,
        p_ppm=MG_L_PER_PERCENT_G_L * p2o5_percent * P_PER_P2O5 * dose_g_l,
        k_ppm=MG_L_PER_PERCENT_G_L * k2o_percent * K_PER_K2O * dose_g_l,
        ca_ppm=MG_L_PER_PERCENT_G_L * cao_percent * CA_PER_CAO * dose_g_l,
        mg_ppm=MG_L_PER_PERCENT_G_L * mgo_percent * MG_PER_MGO * dose_g_l,
        warnings=tuple(warnings),
    )


def oz_per_100_us_gal(*, g_l: float) -> float:
    """Ounces in 100 US gallons, of grams in a litre.

    Equation:
        oz/100 gal = g/L x 100 x 3.785411784 / 28.349523125.
    Arguments:
        g_l: grams in a litre [g/L].
    Returns:
        Avoirdupois ounces in 100 US gallons [oz/100 gal].
    Valid for:
        Any strength.
    Error:
        Exact; the trade's rule of 75 ppm per ounce of a pure nutrient is 0.14 % high.
    Raises:
        Nothing.
    Sources:
        saltline-notes, feed 1.
    """
    return g_l * (100.0 * ML_PER_US_GAL / 1000.0) / G_PER_OZ


def feed_dose(
    *, n_percent: float, target_n_ppm: float, batch_l: float, teaspoon_g: float, injector: float
) -> FeedDose:
    """How much of a product a batch of feed needs.

    Equation:
        g/L = C / (10 %N); grams = g/L x litres; stock = g/L x r, with r litres of finished feed
        from one of stock; spoons = grams / (spoon x (1 +- 0.2)).
    Arguments:
        n_percent: nitrogen on the label [%].
        target_n_ppm: nitrogen wanted in the finished feed [mg/L].
        batch_l: finished feed [L].
        teaspoon_g: one level teaspoon of the product [g].
        injector: r, litres of finished feed from one litre of stock [-]; 1 without an injector.
    Returns:
        FeedDose: grams for the batch, teaspoons as a range, g/L, oz per 100 US gal, stock [g/L].
    Valid for:
        Products sold by weight percent.
    Error:
        Exact for weighed doses; a spoon is +-20 %.
    Raises:
        Nothing within the bounds.
    Sources:
        texas-calcs; argo-fisher-5 (teaspoon); saltline-notes, feed 1.
    """
    dose_g_l = target_n_ppm / (MG_L_PER_PERCENT_G_L * n_percent)
    dose = dose_g_l * batch_l
    return FeedDose(
        dose_g=dose,
        teaspoons_low=dose / (teaspoon_g * (1.0 + TEASPOON_SPREAD)),
        teaspoons_high=dose / (teaspoon_g * (1.0 - TEASPOON_SPREAD)),
        dose_g_l=dose_g_l,
        oz_per_100_us_gal=oz_per_100_us_gal(g_l=dose_g_l),
        stock_g_l=dose_g_l * injector,
        warnings=_dose_warnings(target_n_ppm, dose, dose_g_l * injector, injector),
    )


def _dose_warnings(
    target_n_ppm: float, dose_g: float, stock_g_l: float, injector: float
) -> tuple[str, ...]:
    warnings = []
    if target_n_ppm > N_PPM_TRIAL_TOP:
        warnings.append(STRONG)
    if dose_g < SMALL_DOSE_G and injector == 1.0:
        warnings.append(SMALL_DOSE)
    if injector > 1.0:
        warnings.append(
            "1:100 is read here as 1 part of stock in 100 parts of finished feed. Where an "
            "injector adds 1 part to 100 parts of water, 101 in all, the feed is 1 % weaker."
        )
        if stock_g_l > LABEL_LIMIT_G_L:
            warnings.append(
                "This stock is stronger than 479 g/L, the limit of solubility printed on one "
                "20 % nitrogen feed's label (4 lb per US gallon): some of it stays undissolved."
            )
        elif stock_g_l > KNO3_G_L_0_C:
            warnings.append(
                "A cold stock this strong may grow crystals. A litre of water dissolves 126 g of "
                "potassium nitrate at 0 °C (measured), about 210 g at 10 °C (tables, from memory) "
                "and 316 g at 20 °C (extension table)."
            )
    return tuple(warnings)


def feed_check(
    *,
    water_ms_cm: float,
    feed_ms_cm: float,
    ec_per_100_ppm_n_ms_cm: float,
    label_n_ppm: float | None,
) -> FeedCheck:
    """Nitrogen in a mixed feed by the pen, and whether that agrees with the label.

    Equation:
        N = 100 (EC_feed - EC_water) / EC_100. Half range: 10 % of the difference, or 2 % of both
        readings together where that is more. Expected reading = EC_water + N EC_100 / 100, +-10 %.
    Arguments:
        water_ms_cm: the water before feed goes in [mS/cm at 25 C].
        feed_ms_cm: the mixed feed [mS/cm at 25 C].
        ec_per_100_ppm_n_ms_cm: EC_100, conductivity that 100 mg/L N of this product adds [mS/cm].
        label_n_ppm: nitrogen that the label and the scale promise [mg/L], or None.
    Returns:
        FeedCheck: N with range [mg/L]; the expected reading and how far the pen is off it, or None.
    Valid for:
        The one product that EC_100 belongs to; 20-10-20 and 15-5-15 style feeds and single salts
        are close to straight lines up to 200 mg/L N.
    Error:
        10 %: labels are straight lines, conductivity bends by up to 7 %.
    Raises:
        BadInput: a feed that conducts less than its water.
    Sources:
        purdue-ho-286; saltline-notes, feed 2.
    """
    added = feed_ms_cm - water_ms_cm
    if added < 0.0:
        raise BadInput("feed_ms_cm", "must be at least what the water reads")
    half = max(EC_ERROR * added, PEN_ERROR * (feed_ms_cm + water_ms_cm))
    n_per_ms_cm = 100.0 / ec_per_100_ppm_n_ms_cm
    expected = off = None
    if label_n_ppm is not None:
        expected = water_ms_cm + label_n_ppm / n_per_ms_cm
        off = 100.0 * (feed_ms_cm - expected) / expected
    return FeedCheck(
        n_ppm=n_per_ms_cm * added,
        n_ppm_low=n_per_ms_cm * max(0.0, added - half),
        n_ppm_high=n_per_ms_cm * (added + half),
        expected_ms_cm_low=None if expected is None else (1.0 - EC_ERROR) * expected,
        expected_ms_cm_high=None if expected is None else (1.0 + EC_ERROR) * expected,
        off_percent=off,
        warnings=_check_warnings(ec_per_100_ppm_n_ms_cm, half > EC_ERROR * added, off),
    )


def _check_warnings(ec_100: float, hidden: bool, off: float | None) -> tuple[str, ...]:
    warnings = []
    if ec_100 < EC_PER_100_N_LEAST:
        warnings.append(
            "Below 0.50 mS/cm for 100 ppm nitrogen, part of the nitrogen is urea, which does not "
            "conduct: the pen cannot see it. Use the figure on this product's own label."
        )
    if ec_100 > EC_PER_100_N_MOST:
        warnings.append(
            "Above 0.97 mS/cm for 100 ppm nitrogen there is much in the bag besides nitrogen. Make "
            "sure the figure is for 100 ppm of nitrogen, not for 1 g in a litre."
        )
    if hidden:
        warnings.append(
            "The feed adds little to what the water reads already, so the pen's own error is most "
            "of this range. Check a mix of the same product in rain water instead."
        )
    if off is not None and off > FLAG_PERCENT:
        warnings.append(
            "The pen reads more than 15 % above the label. Look for: a heaped spoon, a smaller "
            "gallon than the label's, stock taken for feed, salt in the can, the pen's scale."
        )
    if off is not None and off < -FLAG_PERCENT:
        warnings.append(
            "The pen reads more than 15 % below the label. Look for: urea, which no pen sees, a "
            "bigger gallon than the label's, crystals at the bottom, damp product, the pen's scale."
        )
    return tuple(warnings)
