"""Inputs that every question about a pot's salt asks alike, and where their defaults come from."""

from __future__ import annotations

from saltline.declare import YES_NO, Choice, Form, Number, Option
from saltline.forms.choices import KINDS, STAGES

FORMS: tuple[Form, ...] = ()

STAGE = Choice(
    name="stage",
    label="What is the plant doing?",
    options=STAGES,
)
KIND = Choice(
    name="kind",
    label="Does it drop all its leaves?",
    options=KINDS,
    default="unknown",
    origin="Unknown counts as deciduous for a new shoot, and as evergreen for a gentle flush at "
    "rest.",
)
GRAIN = Number(
    name="grain_mm",
    label="Size of the granules",
    unit="mm",
    low=1,
    high=30,
    source_low=2,
    source_high=20,
    hint="the middle of the range on the bag, like 6 for 4-8",
)
POT = Number(
    name="pot_l",
    label="Size of the pot",
    unit="l",
    low=0.05,
    high=50,
    hint="fill it with water once and weigh: 1 kg is 1 L",
)
WATER_HELD = Number(
    name="water_held_ml",
    label="Water the drained pot keeps",
    unit="ml",
    low=5,
    high=20000,
    optional=True,
    hint="a plant-free pot of the same granules: soak a night, drain, weigh, less its dry weight",
    origin="Empty: 15 % of the pot, taken as 8-25 % (our estimate). Half as much water means half "
    "as much for each pour; the number of pours hardly moves.",
    source="saltline-notes",
    more=True,
)
RINSE = Number(
    name="rinse_ms_cm",
    label="Water you flush with",
    unit="ms_cm",
    low=0,
    high=5,
    optional=True,
    hint="read it with the same pen: no flush goes below it",
)
LIVE_BEADS = Choice(
    name="live_prills",
    label="Are slow-release beads still feeding in the pot?",
    options=YES_NO,
    default="no",
    origin="No means the beads are spent or there are none. Live ones keep readings up.",
    more=True,
)
MEDIUM = Choice(
    name="medium",
    label="What is in the pot?",
    options=(
        Option(value="granules", label="Clay, pumice or other mineral granules"),
        Option(value="bark", label="Bark, or a mix with bark or zeolite"),
    ),
    default="granules",
    origin="Bark and zeolite bind salt, so they let go of less than this says.",
    more=True,
)
SOFTENED = Choice(
    name="softened",
    label="Does the water come from a softener?",
    options=YES_NO,
    default="no",
    origin="Most taps are not softened. A softener that uses salt puts sodium into the water.",
    more=True,
)

OWN_BASIN = (
    "One pot, one basin, own jug, and throw the water away: rots and viruses travel in shared "
    "flush water."
)
AWAY = (
    "The water that ran out is fertilizer: to other plants or a lawn where local codes allow, not "
    "into a pond or a storm drain."
)
LINE = "The root above the granules: a ring of salt there is not washed by this."
NO_POT = "No pot of clay granules has been measured against this model yet."
LAYERS = "Layers. Drips lean to the bottom of the pot."
BINDING = "Salt that is bound, as in bark and zeolite, or not dissolved, as lime and beads."
ASSUMED = (
    "A film of water round granules that are spheres of one size, salt moving in and out by "
    "diffusion only.",
    "Over the pots that could be yours: diffusivity 0.1-0.75e-9 m2/s, a quarter of the water "
    "outside the granules (give or take a tenth), water held 8-25 % of the pot unless weighed, up "
    "to 60 % of a pour running straight past. Shown is where 8 pots in 10 lie.",
    "Readings are at 25 °C.",
)
