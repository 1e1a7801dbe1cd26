"""Declarations: how strong a feed is."""

from __future__ import annotations

from saltline import strength
from saltline.asking import Next
from saltline.declare import Form, Number, Result
from saltline.pictures import feed as pictures
from saltline.words import strength as words

PAGE = "care/fertilizer-strength/"
KEEP = "Fertilizer goes in a labelled box, dry and locked, away from children, pets and food."
DRAIN = (
    "Use mixed feed up on plants or lawn where local codes allow; not into a pond, a storm drain "
    "or a septic tank."
)

N_PERCENT = Number(
    name="n_percent",
    label="Nitrogen on the label",
    unit="percent",
    low=0.1,
    high=50,
    hint="the first of the three numbers",
)
WATER = Number(
    name="water_ms_cm",
    label="What your water reads before feed goes in",
    unit="ms_cm",
    low=0,
    high=5,
    hint="read it with the same pen",
)
INJECTOR = Number(
    name="injector",
    label="Injector",
    unit="times",
    low=1,
    high=1000,
    default=1,
    hint="100 for 1:100; 1 without an injector",
    origin="Most growers mix in a can.",
    more=True,
)


def _oxide(name: str, label: str, hint: str, more: bool = False) -> Number:
    return Number(
        name=name,
        label=label,
        unit="percent",
        low=0,
        high=100,
        default=0,
        hint=hint,
        origin="Taken as none where the label is silent.",
        more=more,
    )


LABEL_STRENGTH = Form(
    id="label-strength",
    question="How strong is this mix?",
    function=strength.label_strength,
    version=1,
    inputs=(
        Number(
            name="n_percent",
            label="Nitrogen on the label",
            unit="percent",
            low=0,
            high=50,
            hint="the first of the three numbers",
        ),
        _oxide("p2o5_percent", "Phosphate (P₂O₅)", "the second number"),
        _oxide("k2o_percent", "Potash (K₂O)", "the third number"),
        _oxide(
            "cao_percent",
            "Calcium oxide (CaO)",
            "a label that prints calcium (Ca) itself: times 1.40",
            more=True,
        ),
        _oxide(
            "mgo_percent",
            "Magnesium oxide (MgO)",
            "a label that prints magnesium (Mg) itself: times 1.66",
            more=True,
        ),
        Number(
            name="dose_g_l",
            label="Product in each litre of feed",
            unit="g_l",
            low=0,
            high=500,
            source_high=10,
            hint="grams in the jug divided by litres in the jug",
        ),
    ),
    results=(
        Result(name="n_ppm", label="Nitrogen (N)", unit="ppm"),
        Result(name="p_ppm", label="Phosphorus (P)", unit="ppm"),
        Result(name="k_ppm", label="Potassium (K)", unit="ppm"),
        Result(name="ca_ppm", label="Calcium (Ca)", unit="ppm"),
        Result(name="mg_ppm", label="Magnesium (Mg)", unit="ppm"),
    ),
    words=words.label_strength,
    picture=pictures.label_strength,
    example={"n_percent": 20.0, "p2o5_percent": 10.0, "k2o_percent": 20.0, "dose_g_l": 0.5},
    equation=(
        r"C = 10\, g\, w",
        r"w_\mathrm{P} = 0.43643\, w_{\mathrm{P_2O_5}}",
        r"w_\mathrm{K} = 0.83015\, w_{\mathrm{K_2O}}",
        r"w_\mathrm{Ca} = 0.71470\, w_\mathrm{CaO}",
        r"w_\mathrm{Mg} = 0.60304\, w_\mathrm{MgO}",
    ),
    working=(
        "N = 10 × {in:n_percent} × {in:dose_g_l} = {n_ppm}",
        "P = 10 × 0.43643 × {in:p2o5_percent} × {in:dose_g_l} = {p_ppm}",
        "K = 10 × 0.83015 × {in:k2o_percent} × {in:dose_g_l} = {k_ppm}",
        "Ca = 10 × 0.71470 × {in:cao_percent} × {in:dose_g_l} = {ca_ppm}",
        "Mg = 10 × 0.60304 × {in:mgo_percent} × {in:dose_g_l} = {mg_ppm}",
    ),
    follow=(
        Next(
            id="feed-check",
            page=PAGE,
            label="Check this mix with the pen",
            carry={"label_n_ppm": "n_ppm"},
        ),
    ),
    assumptions=(
        "The label counts phosphate and potash as oxides, as most do. Some print P and K as "
        "elements: then phosphorus is 2.3 times and potassium 1.2 times what you read here.",
        "Everything dissolves.",
    ),
    cannot_see=(
        "Whether the nitrogen is nitrate, ammonium or urea: the small print of the label says.",
        "What the water brings: hard water holds calcium and magnesium already.",
        "A figure for your orchid: none was found for Catasetum or Paphiopedilum in ppm nitrogen.",
    ),
    cautions=(KEEP, DRAIN),
    cases=(
        {"dose_g_l": 0.25},
        {"dose_g_l": 0.5},
        {"dose_g_l": 1.0},
        {"n_percent": 15.0, "p2o5_percent": 5.0, "k2o_percent": 15.0, "dose_g_l": 0.5},
        {"n_percent": 20.0, "p2o5_percent": 20.0, "k2o_percent": 20.0, "dose_g_l": 0.5},
    ),
    sources=("iupac-masses", "vt-spes-201", "wang-2000", "wur-phalaenopsis-2014"),
)

FEED_DOSE = Form(
    id="feed-dose",
    question="How much for this jug?",
    function=strength.feed_dose,
    version=1,
    inputs=(
        N_PERCENT,
        Number(
            name="target_n_ppm",
            label="Nitrogen wanted in the feed",
            unit="ppm",
            low=1,
            high=1000,
            source_low=10,
            source_high=280,
            hint="our usual is 100 to 125 (our own proposal); less for few roots",
        ),
        Number(
            name="batch_l",
            label="Feed to mix",
            unit="l",
            low=0.05,
            high=10000,
            hint="finished feed, ready for the pots",
        ),
        Number(
            name="teaspoon_g",
            label="A level teaspoon of it weighs",
            unit="g",
            low=1,
            high=15,
            default=6,
            hint="weigh ten level spoons once and divide",
            origin="About 6 g in a grower's guide (second-hand), by the product 5 to 7 g. Weighed "
            "grams do not need it; the spoons move as much as it is wrong.",
            source="argo-fisher-5",
            more=True,
        ),
        INJECTOR,
    ),
    results=(
        Result(name="dose_g", label="Weigh for the batch", unit="g"),
        Result(name="teaspoons_low", label="Level teaspoons, at least", unit="tsp", digits=2),
        Result(name="teaspoons_high", label="at most", unit="tsp", digits=2),
        Result(name="dose_g_l", label="In each litre of feed", unit="g_l"),
        Result(name="oz_per_100_us_gal", label="The same", unit="oz_100_gal"),
        Result(name="stock_g_l", label="In each litre of stock", unit="g_l"),
    ),
    words=words.feed_dose,
    picture=pictures.feed_dose,
    example={"n_percent": 20.0, "target_n_ppm": 100.0, "batch_l": 5.0},
    equation=(
        r"g = \frac{C}{10\, w_\mathrm{N}}",
        r"m = g\, V",
        r"g_\mathrm{stock} = g\, r",
    ),
    working=(
        "g = {in:target_n_ppm} ÷ (10 × {in:n_percent}) = {dose_g_l}",
        "m = {dose_g_l} × {in:batch_l} = {dose_g}",
        "{dose_g} ÷ {in:teaspoon_g}, a fifth more or less: {teaspoons_low..teaspoons_high}",
        "for the stock {in:injector} as much in a litre: {stock_g_l}",
    ),
    follow=(
        Next(
            id="feed-check",
            page=PAGE,
            label="Check the mix with the pen",
            carry={"label_n_ppm": "target_n_ppm"},
        ),
        Next(
            id="feed-often",
            page=PAGE,
            label="How often with this feed?",
            carry={"n_ppm": "target_n_ppm"},
        ),
    ),
    assumptions=(
        "The spoon is level, and a spoon is off by a fifth either way.",
        "1:100 is 1 part of stock in 100 parts of finished feed.",
        "An ounce is 28.35 g and a gallon the US one, 3.785 L. An imperial gallon is a fifth more.",
    ),
    cannot_see=(
        "Damp product: it weighs more and feeds less.",
        "Salt that your water holds already: read the pen after mixing.",
    ),
    cautions=(
        KEEP,
        DRAIN,
        "Keep the end of a filling hose above the water and fit a backflow preventer: feed must "
        "not run back into the drinking water.",
    ),
    cases=tuple(
        {"n_percent": percent, "target_n_ppm": target, "batch_l": 5.0}
        for percent in (13.0, 15.0, 20.0)
        for target in (50.0, 100.0)
    ),
    sources=(
        "texas-calcs",
        "umass-calculations",
        "argo-fisher-5",
        "negu-injector",
        "msu-concentration",
        "iupac-nist-66",
        "crc-solubility",
        "dpird-stock",
        "wur-phalaenopsis-2014",
        "arizona-gardener",
        "marion-stormwater",
    ),
)

FORMS = (LABEL_STRENGTH, FEED_DOSE)
