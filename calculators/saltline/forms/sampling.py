"""Declarations: how many pots to read, what a batch's readings say, and whether they drift."""

from __future__ import annotations

from saltline import drift, sampling
from saltline.declare import Form, Number, Numbers, Result
from saltline.pictures import sampling as pictures
from saltline.words import sampling as words

POTS = Number(
    name="pots",
    label="Pots in the batch",
    unit="pots",
    low=1,
    high=100000,
    whole=True,
    hint="pots of one medium, one feed and one age",
)
READINGS_HINT = "one method and one pen, on one scale, like 0.9, 1.1, 1.4"

SAMPLE = Form(
    id="sample",
    question="How many pots do I test?",
    function=sampling.sample,
    version=1,
    inputs=(
        POTS,
        Number(
            name="spread_percent",
            label="How much do pots differ?",
            unit="percent",
            low=0.1,
            high=300,
            digits=2,
            hint="the standard deviation of some readings over their mean; never measured: 25",
        ),
        Number(
            name="within_percent",
            label="How near should the mean be?",
            unit="percent",
            low=0.5,
            high=200,
            digits=2,
            hint="20, a fifth either way, will do to decide on a flush (our estimate)",
        ),
        Number(
            name="bad_pots",
            label="Bad pots that should not be missed",
            unit="pots",
            low=1,
            high=100000,
            whole=True,
            optional=True,
            hint="leave empty if only the mean matters",
        ),
        Number(
            name="sure_percent",
            label="How sure?",
            unit="percent",
            low=50,
            high=99.9,
            default=95,
            origin="The trade's habit. At 80 % about half as many pots will do.",
            source="common-practice",
            more=True,
        ),
    ),
    results=(
        Result(name="sample_for_mean", label="To know the mean", unit="pots"),
        Result(name="sample_to_find", label="To meet a bad pot", unit="pots"),
    ),
    words=words.sample,
    picture=pictures.sample,
    example={"pots": 60, "spread_percent": 25.0, "within_percent": 20.0, "bad_pots": 6},
    equation=(
        r"t_{n-1}\, \frac{s}{\sqrt{n}} \sqrt{\frac{N - n}{N - 1}} \le w",
        r"1 - \prod_{j=0}^{B-1} \frac{N - n - j}{N - j} \ge P",
    ),
    working=(
        "N = {in:pots}, spread s = {in:spread_percent}, within w = {in:within_percent}: n = "
        "{sample_for_mean}",
        "bad ones B = {in:bad_pots}, sure P = {in:sure_percent}: n = {sample_to_find}",
    ),
    assumptions=(
        "The pots are taken at random: not the sick ones, not the front row.",
        "Readings spread about evenly round their mean, as was found in one nursery trial.",
    ),
    cannot_see=(
        "Pots on another medium or feed: they are another batch.",
        "How far the first drips of one pot are from its own mean.",
    ),
    cases=tuple(
        {"pots": pots, "spread_percent": 25.0, "within_percent": 20.0, "bad_pots": bad}
        for pots, bad in ((10, 1), (12, 2), (20, 2), (60, 6), (300, 30))
    ),
    sources=("hortsci-42-661", "leaflet-590", "saltline-notes"),
)

BATCH = Form(
    id="batch",
    question="What do these readings say?",
    function=sampling.batch,
    version=1,
    inputs=(
        Numbers(
            name="readings",
            label="Readings pot by pot",
            unit="",
            low=0,
            high=200000,
            hint=READINGS_HINT,
        ),
        POTS,
    ),
    results=(
        Result(name="mean", label="Mean"),
        Result(name="mean_low", label="at least"),
        Result(name="mean_high", label="at most"),
        Result(name="median", label="Middle reading"),
        Result(name="odd_pot", label="Odd pot", kind="words"),
    ),
    words=words.batch,
    picture=pictures.batch,
    example={"readings": [0.9, 1.1, 1.4, 1.0, 2.6], "pots": 12},
    equation=(
        r"\bar{x} \pm t_{n-1}\, \frac{s}{\sqrt{n}}",
        r"G = \frac{|x - \bar{x}|}{s} > G_{0.05}(n)",
    ),
    working=(
        "mean x̄ = {mean}; with its 95 % range {mean_low..mean_high}",
        "a pot stands apart where G is above what one in twenty batches without an odd pot "
        "would show",
    ),
    assumptions=(
        "The pots were taken at random, one reading each.",
        "The range is that of a large batch; for a few pots it is on the wide side.",
    ),
    cannot_see=(
        "The salt line above the medium: drips come from below it.",
        "Whether the pen is right. Check it in a bottle of standard, 1.413 mS/cm.",
    ),
    cases=(
        {"readings": [0.9, 1.1, 1.4, 1.0, 2.6], "pots": 60},
        {"readings": [0.9, 1.1, 1.4, 1.0, 2.5], "pots": 60},
        {"readings": [0.8, 0.9, 0.9, 1.0, 1.0, 1.1], "pots": 12},
    ),
    sources=("hortsci-42-661", "grubbs-1969", "saltline-notes"),
)

DRIFT = Form(
    id="drift",
    question="Is it drifting?",
    function=drift.drift,
    version=1,
    inputs=(
        Numbers(
            name="days",
            label="Day of each reading",
            unit="days",
            low=0,
            high=100000,
            least=2,
            hint="counted from the first, like 0, 7, 14",
        ),
        Numbers(
            name="readings",
            label="Readings of the same pot or pots",
            unit="",
            low=0,
            high=200000,
            least=2,
            hint=READINGS_HINT,
        ),
        Number(
            name="limit",
            label="Your own limit",
            unit="",
            low=0,
            high=200000,
            hint="on the same scale; no limit for orchids is published",
        ),
    ),
    results=(
        Result(name="slope_per_week", label="Change a week", digits=2),
        Result(name="slope_per_week_low", label="at least", digits=2),
        Result(name="slope_per_week_high", label="at most", digits=2),
        Result(name="weeks_low", label="Limit reached, at the earliest", unit="weeks", digits=2),
        Result(name="weeks_high", label="at the latest", unit="weeks", digits=2),
    ),
    words=words.drift,
    picture=pictures.drift,
    example={
        "days": [0.0, 7.0, 14.0, 21.0, 28.0, 35.0],
        "readings": [1.0, 1.1, 1.3, 1.4, 1.7, 1.8],
        "limit": 2.5,
    },
    equation=(
        r"\beta = \frac{\sum (t_i - \bar{t}) (x_i - \bar{x})}{\sum (t_i - \bar{t})^2}",
        r"\beta \pm t_{n-2}\, \frac{s}{\sqrt{\sum (t_i - \bar{t})^2}}",
        r"\mathrm{weeks} = \frac{x_\mathrm{limit} - x_\mathrm{last}}{\beta}",
    ),
    working=(
        "β = {slope_per_week} a week, with its 95 % range "
        "{slope_per_week_low..slope_per_week_high}",
        "to the limit of {in:limit}: {weeks_low..weeks_high}",
    ),
    assumptions=("No flush, no repotting and no change of feed between the readings.",),
    cannot_see=(
        "A pen that drifts: read a bottle of standard each time and write it down.",
        "A hot week: a nursery trial saw it in the drain water two to four weeks later.",
        "The scatter of the last reading: the weeks come from the slope's range alone.",
    ),
    cases=(
        {"days": [0.0, 14.0, 28.0], "readings": [0.8, 0.9, 1.1], "limit": 1.5},
        {"days": [0.0, 14.0, 28.0, 42.0], "readings": [1.0, 1.1, 0.9, 1.0], "limit": 1.5},
        {"days": [0.0, 14.0, 28.0, 42.0], "readings": [1.6, 1.3, 1.1, 0.8], "limit": 1.5},
    ),
    sources=("hortsci-42-661", "saltline-notes"),
)

FORMS = (SAMPLE, BATCH, DRIFT)
