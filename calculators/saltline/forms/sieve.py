"""Declarations: parting beads from granules."""

from __future__ import annotations

from saltline import sieve
from saltline.declare import Form, Number, Result
from saltline.pictures import sieve as pictures
from saltline.words import sieve as words

SIEVE = Form(
    id="sieve",
    question="Which mesh parts beads from granules?",
    function=sieve.sieve,
    version=1,
    inputs=(
        Number(
            name="prill_min_mm",
            label="Smallest bead",
            unit="mm",
            low=0.2,
            high=20,
            hint="measure twenty beads; most are 2 to 4 mm across",
        ),
        Number(
            name="prill_max_mm",
            label="Largest bead",
            unit="mm",
            low=0.2,
            high=20,
            hint="most are 2 to 4 mm across",
        ),
        Number(
            name="grain_min_mm",
            label="Smallest granule",
            unit="mm",
            low=0.2,
            high=40,
            hint="the smaller figure on the bag, or measure",
        ),
    ),
    results=(
        Result(name="aperture_mm", label="Opening of the mesh", unit="mm"),
        Result(name="margin_mm", label="To spare on the tighter side", unit="mm", digits=2),
        Result(name="dust_mm", label="Mesh that holds the beads and drops dust", unit="mm"),
        Result(name="answer", label="In a word", kind="words"),
    ),
    words=words.sieve,
    picture=pictures.sieve,
    example={"prill_min_mm": 2.0, "prill_max_mm": 4.0, "grain_min_mm": 8.0},
    equation=(r"\max_a\, \min \left( a - d_b,\ d_g - a \right)",),
    working=(
        "a = {aperture_mm}: {aperture_mm} − bead {in:prill_max_mm}, granule {in:grain_min_mm} "
        "− {aperture_mm}",
        "the smaller of the two: {margin_mm}",
    ),
    assumptions=(
        "Openings are those of the main and secondary series for test sieves, 0.25 to 31.5 mm. A "
        "kitchen or garden sieve near one of them does as well: measure its opening.",
        "A margin under a tenth of the opening is called tight (our estimate).",
    ),
    cannot_see=(
        "Granules smaller than the bag says, and beads that are swollen, broken or stuck together.",
    ),
    cautions=(
        "Sieve wet, outdoors: the dust of baked clay and pumice is not for lungs.",
        "Used beads are still fertilizer: away from children and pets, and not into a drain where "
        "local codes forbid it.",
        "Not through living roots: in mid-season take only the beads on the surface.",
    ),
    cases=(
        {"prill_min_mm": 2.0, "prill_max_mm": 4.0, "grain_min_mm": 8.0},
        {"prill_min_mm": 2.0, "prill_max_mm": 4.0, "grain_min_mm": 4.0},
        {"prill_min_mm": 2.0, "prill_max_mm": 4.0, "grain_min_mm": 2.0},
        {"prill_min_mm": 0.6, "prill_max_mm": 1.0, "grain_min_mm": 4.0},
    ),
    sources=("iso-565", "saltline-notes", "common-practice"),
)

FORMS = (SIEVE,)
