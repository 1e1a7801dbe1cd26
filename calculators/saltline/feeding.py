"""How often to feed: what stage and roots allow, and what that comes to beside the trials."""

from __future__ import annotations

from typing import NamedTuple

from saltline.strength import N_PPM_TRIAL_TOP, STRONG

DAYS_A_MONTH = 30.0
# House default, proposed (docs/sources.json: saltline-notes, feed 3).
USUAL_N_PPM_LOW = 100.0
USUAL_N_PPM_HIGH = 125.0

# The best of four strengths for a Cattleya of 28 g in pumice: 231 mg/L N, 20 mL every 7 days
# (docs/sources.json: tanaka-1988).
TRIAL_N_PPM = 231.0
TRIAL_ML = 20.0
TRIAL_DAYS = 7.0

# Waterings in four that carry feed. In growth three weeks of feed and one of clear water
# (docs/sources.json: hackney-2011); the tapering is proposed.
IN_GROWTH = 3
TAPERING = 1


class FeedOften(NamedTuple):
    """The answer of `feed_often`: strength in words, waterings in four, nitrogen a month [mg]."""

    strength: str
    feeds_of_four: int
    usual_n_ppm_low: float
    usual_n_ppm_high: float
    n_mg_month: float | None
    trial_mg_month: float
    times_trial: float | None
    warnings: tuple[str, ...]


def nitrogen_mg_month(*, n_ppm: float, feed_ml: float, every_days: float) -> float:
    """Nitrogen that a pot gets in 30 days.

    Equation:
        mg = ppm x mL / 1000 x 30 / days between.
    Arguments:
        n_ppm: nitrogen in the feed [mg/L].
        feed_ml: feed that stays in the pot each time [mL].
        every_days: days from one feed to the next [days].
    Returns:
        Nitrogen [mg in 30 days].
    Valid for:
        Feed that stays in the pot: what drains through takes its share with it.
    Error:
        Exact.
    Raises:
        Nothing for days above 0.
    Sources:
        saltline-notes, feed 3.
    """
    return n_ppm * feed_ml / 1000.0 * DAYS_A_MONTH / every_days


def feed_often(
    *, stage: str, kind: str, roots: str, n_ppm: float, water_use_ml_day: float | None
) -> FeedOften:
    """How strong and how often to feed a plant at this stage with these roots.

    Equation:
        Stage first, roots second, in words. Nitrogen a month = ppm x water used x 30 days x share
        of waterings that carry feed, beside a trial's 231 ppm x 20 mL x 30/7.
    Arguments:
        stage: growing, maturing, resting, new_shoot, lost_roots or rotting.
        kind: deciduous, evergreen, monopodial or unknown.
        roots: none, some, wall (at the pot's wall) or full.
        n_ppm: nitrogen in the grower's feed [mg/L].
        water_use_ml_day: what the pot loses between waterings [mL/day], or None.
    Returns:
        FeedOften: none, weak or usual; waterings in four with feed; mg of nitrogen a month.
    Valid for:
        Pots of airy mineral media that are watered until they drain, so that each watering
        replaces what was used.
    Error:
        Words: no published rule ties feed to roots. The milligrams are as good as the weighing.
    Raises:
        Nothing.
    Sources:
        tanaka-1988; hackney-2011; bottom-2023; clarke-2012; saltline-notes, growing 3.
    """
    strength, feeds = _allowed(stage, kind, roots)
    trial = nitrogen_mg_month(n_ppm=TRIAL_N_PPM, feed_ml=TRIAL_ML, every_days=TRIAL_DAYS)
    month = None
    if water_use_ml_day is not None:
        month = nitrogen_mg_month(n_ppm=n_ppm, feed_ml=water_use_ml_day, every_days=1.0) * feeds / 4
    return FeedOften(
        strength=strength,
        feeds_of_four=feeds,
        usual_n_ppm_low=USUAL_N_PPM_LOW,
        usual_n_ppm_high=USUAL_N_PPM_HIGH,
        n_mg_month=month,
        trial_mg_month=trial,
        times_trial=None if month is None else month / trial,
        warnings=_warnings(stage, roots, strength, n_ppm),
    )


def _allowed(stage: str, kind: str, roots: str) -> tuple[str, int]:
    """Strength in words, and waterings in four that carry it."""
    if stage in ("rotting", "lost_roots", "new_shoot") or roots == "none":
        return "none", 0
    if stage == "resting":
        return ("weak", TAPERING) if kind in ("evergreen", "monopodial") else ("none", 0)
    if stage == "maturing":
        return "weak", TAPERING
    return ("weak" if roots == "some" else "usual"), IN_GROWTH


def _warnings(stage: str, roots: str, strength: str, n_ppm: float) -> tuple[str, ...]:
    found = []
    if n_ppm > N_PPM_TRIAL_TOP:
        found.append(STRONG)
    if strength == "weak" and n_ppm >= USUAL_N_PPM_LOW:
        found.append(
            "Your feed is at the usual strength or above. Make it weaker now, not only rarer: "
            "strength burns a root, grams feed a plant."
        )
    if strength == "usual" and USUAL_N_PPM_HIGH < n_ppm <= N_PPM_TRIAL_TOP:
        found.append(
            "Above our usual 100-125 ppm nitrogen. Trials went higher without harm to flowers; "
            "root mass fell all the way as the water of a Phalaenopsis got saltier."
        )
    if stage == "growing" and roots == "full":
        found.append("A pot full of roots is a reason to repot in season, not to feed stronger.")
    if stage == "maturing":
        found.append(
            "Feed stops before rest: let the last heavy watering be clear water that washes the "
            "pot through, and take slow-release beads out."
        )
    return tuple(found)
