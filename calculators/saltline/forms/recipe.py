"""Declarations: a recipe from the grower's own products."""

from __future__ import annotations

from saltline import recipe
from saltline.asking import Screen, Way
from saltline.declare import Form, Number, Result, Words
from saltline.forms.strength import DRAIN, INJECTOR, KEEP, WATER
from saltline.pictures import feed as pictures
from saltline.products import PRODUCTS
from saltline.words import recipe as words


def _wanted(name: str, label: str, high: float, hint: str = "0 takes what comes") -> Number:
    return Number(
        name=name,
        label=label,
        unit="ppm",
        low=0,
        high=high,
        default=0,
        hint=hint,
        origin="0: not asked for, so whatever the others bring.",
    )


# Our own proposals: no trial tells what a pot of granules wants.
GROWING = {"n_ppm": 105.0, "p_ppm": 15.0, "k_ppm": 80.0, "ca_ppm": 60.0, "mg_ppm": 20.0}
GENTLE = {"n_ppm": 50.0, "p_ppm": 7.0, "k_ppm": 40.0, "ca_ppm": 30.0, "mg_ppm": 10.0}


def _way(label: str, values: dict[str, float], origin: str) -> Way:
    names = ("nitrogen", "phosphorus", "potassium", "calcium", "magnesium")
    first, *others = (f"{name} {ppm:g}" for name, ppm in zip(names, values.values(), strict=True))
    hint = ", ".join([first + " ppm", *others]) + ": our own proposal"
    return Way(label=label, hint=hint, values=values, origin=origin)


NEEDS = Screen(
    question="What is the feed for?",
    hint="A plant at rest, without live roots, or with rot gets no feed.",
    ways=(
        _way(
            "Leaves and roots in growth",
            GROWING,
            "nitrogen in our usual 100 to 125 ppm (proposed). Potassium three quarters of it: a "
            "Cattleya did best with half, Phalaenopsis wanted as much (abstracts read). Phosphorus "
            "a seventh of it: a fifth is advised for Phalaenopsis, and more did harm (abstract "
            "read). Calcium and magnesium: no source. The grams move with them.",
        ),
        _way(
            "Few roots, seedlings, divisions",
            GENTLE,
            "about half of the same; this page proposes a quarter to a half.",
        ),
    ),
    folded=tuple(GROWING),
    fold="Your own numbers",
)
SHELF = Screen(question="What stands on your shelf?", inputs=("products",))
JUG = Screen(
    question="Which water, and how big is the jug?",
    inputs=("water_ms_cm", "batch_l"),
    folded=("injector",),
    fold="For greenhouses",
)

FEED_RECIPE = Form(
    id="feed-recipe",
    question="Which of my products for these needs?",
    function=recipe.feed_recipe,
    version=1,
    inputs=(
        Words(
            name="products",
            label="Products you have",
            choices=tuple((item.id, item.label) for item in PRODUCTS),
            most=len(PRODUCTS),
            hint="tick what stands on your shelf",
        ),
        _wanted("n_ppm", "Nitrogen wanted", 600, "our usual is 100 to 125 (our own proposal)"),
        _wanted("p_ppm", "Phosphorus wanted (P, the element)", 300),
        _wanted("k_ppm", "Potassium wanted (K, the element)", 800),
        _wanted("ca_ppm", "Calcium wanted beside your water's", 500),
        _wanted("mg_ppm", "Magnesium wanted beside your water's", 200),
        WATER,
        Number(
            name="batch_l",
            label="Feed to mix",
            unit="l",
            low=0.05,
            high=10000,
            default=1,
            hint="finished feed in your jug or can, ready for the pots",
            origin="One litre: the grams go up with the litres.",
        ),
        INJECTOR,
    ),
    screens=(NEEDS, SHELF, JUG),
    results=(
        Result(name="grams_per_l", label="Grams in a litre, in your order", unit="g_l"),
        Result(
            name="reached_ppm",
            label="Reached: nitrogen, phosphorus, potassium, calcium, magnesium",
            unit="ppm",
        ),
        Result(name="ec_ms_cm_low", label="The pen should read at least", unit="ms_cm", digits=2),
        Result(name="ec_ms_cm_high", label="at most", unit="ms_cm", digits=2),
        Result(name="dose_g", label="Grams for the jug, in your order", unit="g"),
        Result(name="stock_g_l", label="In a litre of stock, in your order", unit="g_l"),
        Result(
            name="oz_per_100_us_gal", label="The feed in ounces, in your order", unit="oz_100_gal"
        ),
    ),
    words=words.feed_recipe,
    picture=pictures.feed_recipe,
    example={
        **GROWING,
        "products": [
            "calcium_ammonium_nitrate",
            "magnesium_nitrate",
            "potassium_nitrate",
            "monoammonium_phosphate",
        ],
        "water_ms_cm": 0.05,
        "batch_l": 5.0,
    },
    equation=(r"\min_{x \ge 0} \sum_i \left( \sum_j a_{ij} x_j - b_i \right)^2",),
    working=(
        "the smallest sum of squared misses in ppm, over the nutrients you asked for",
        "no product in a negative amount",
    ),
    assumptions=(
        "A miss of 10 ppm counts the same for every nutrient you ask for.",
        "Single salts are dry and pure; grades are what their numbers say.",
        "Of 20-10-20 two fifths of the nitrogen are ammonium; 15-5-15 balances its charges.",
    ),
    cannot_see=(
        "Iron and the other trace elements: single salts bring none.",
        "pH: ammonium makes a pot more acid, nitrate less.",
        "What is in your water beside its conductivity. Hard water with phosphate turns cloudy.",
        "What your orchid wants: no such recipe is published for most of them.",
    ),
    cautions=(
        "Nitrates feed a fire: keep them dry, away from fuel, acid and heat.",
        KEEP,
        DRAIN,
    ),
    cases=(
        {
            "p_ppm": 0.0,
            "k_ppm": 0.0,
            "ca_ppm": 0.0,
            "mg_ppm": 0.0,
            "products": ["grade_20_10_20"],
        },
        {"p_ppm": 0.0, "products": ["grade_15_5_15", "calcium_ammonium_nitrate"]},
        {"products": ["grade_20_10_20", "calcium_nitrate", "magnesium_sulfate"]},
        {"products": ["grade_20_20_20", "magnesium_sulfate"]},
    ),
    sources=(
        "lawson-hanson-1974",
        "iupac-masses",
        "saltline-notes",
        "wang-2008",
        "wang-2007",
        "tanaka-1988",
        "ashs-2009-2001",
        "crc-solubility",
    ),
)

FORMS = (FEED_RECIPE,)
