"""Cause by stage: which action, and how it is said. Data; the table is proposed (unpublished).

Built from published rules for each stage (docs/sources.json: clarke-2012, aos-catasetum-sheet,
aos-fertilizer-burn, mobot-repotting, motes-south-florida, palomar-monthly).
"""

from __future__ import annotations

ROOT_TRIGGER_CM = 7.6  # longest new roots at the first water; docs/sources.json: clarke-2012
ROOT_TRIGGER_LOW_CM = 6.4  # a grower's note, second-hand (saltline-notes, growing 2)
ROOT_TRIGGER_HIGH_CM = 12.7  # clarke-2012

# Columns: growing; maturing; resting and new shoot of a kind that drops its leaves; the same of
# any other or unknown kind. A stage of lost roots or of rot has its own rule (stage_action).
COLUMNS = ("growing", "maturing", "resting_bare", "shoot_bare", "resting", "shoot")
# fmt: off
ACTIONS = (
    ("salt_line", ("flush", "flush", "keep_dry", "repot", "flush", "repot")),
    ("salty_pot", ("flush", "flush", "keep_dry", "repot", "flush", "repot")),
    ("lime", ("treat", "leave", "leave", "repot", "leave", "repot")),
    ("wet_rot", ("look_inside", "look_inside", "look_inside", "repot", "look_inside", "repot")),
    ("black_rot", ("treat", "treat", "treat", "treat", "treat", "treat")),
    ("fusarium", ("treat", "treat", "treat", "treat", "treat", "treat")),
    ("soft_rot", ("treat", "treat", "treat", "treat", "treat", "treat")),
    ("drought", ("treat", "treat", "leave", "leave", "treat", "treat")),
    ("cold", ("treat", "treat", "keep_dry", "keep_dry", "treat", "treat")),
    ("heat", ("treat", "treat", "treat", "treat", "treat", "treat")),
    ("chewing_pest", ("treat", "treat", "treat", "treat", "treat", "treat")),
    ("mites", ("treat", "treat", "treat", "treat", "treat", "treat")),
    ("rest", ("leave", "leave", "keep_dry", "keep_dry", "leave", "leave")),
    ("medium_change", ("leave", "leave", "leave", "leave", "leave", "leave")),
    ("old_age", ("leave", "leave", "leave", "leave", "leave", "leave")),
    ("none_of_these", ("leave", "leave", "keep_dry", "keep_dry", "leave", "leave")),
    ("unsure", ("read", "read", "keep_dry", "keep_dry", "read", "look_inside")),
)
# fmt: on

# What to do, by action; then what differs for one cause.
DO = (
    (
        "look_inside",
        "Take the plant out of its pot, cut soft roots back to firm ones with a flamed blade, let "
        "it dry for a day and pot it drier in fresh granules.",
    ),
    (
        "read",
        "Water with clear water, let the drained pot stand covered overnight at 18 °C or more, and "
        "read its first drips.",
    ),
    (
        "flush",
        "Lift the slow-release beads off the surface, then flush with clear water; let the pot dry "
        "down as usual before a weak feed.",
    ),
    (
        "repot",
        "Strip the old granules, rinse the roots in clear water, cut away what is soft, and pot in "
        "fresh granules.",
    ),
    ("keep_dry", "Keep it dry and shaded, and repot in fresh granules when the new shoot starts."),
    ("leave", "Leave it as it is, and look again in two weeks."),
    ("treat", "Mend the cause, and leave the roots alone."),
)
# "keep_dry" once the shoot is out: nothing is wrong with the pot, so repotting is no must.
DRY_WITH_SHOOT = (
    "Keep it dry and shaded. If you want to repot it in fresh granules, this is the moment."
)
LOOK_AGAIN = (  # "leave", where it is not two weeks
    ("drought", "Look again in a month."),
    ("medium_change", "Look for new tips in four weeks."),
)
READ_AGAIN = (  # "read", where a rested reading has been taken already
    "Look for the signs you have not looked for yet, and read the first drips again in two weeks: "
    "the trend tells more than one reading."
)
DO_FOR = (
    (
        "salt_line",
        "flush",
        "Wrap the ring in wet tissue, or run a fine trickle round it, for 5 to 10 minutes with "
        "crown and new shoot dry; then flush slowly from the top, take off the crusted layer, and "
        "stop feeding through the saucer.",
    ),
    (
        "salt_line",
        "read",
        "Stir a pinch of the crust into a spoon of pure water and read it before and after; until "
        "then lift the beads off the surface and rinse the ring with wet tissue for 5 to "
        "10 minutes.",
    ),
    (
        "salt_line",
        "leave",
        "Leave the pot alone and watch it: rinse the ring with wet tissue for 5 to 10 minutes, "
        "keep the feed weak, and look again in two weeks.",
    ),
    (
        "salt_line",
        "keep_dry",
        "Brush the crust into the bin, keep the pot dry, and repot in fresh granules when the new "
        "shoot starts.",
    ),
    (
        "lime",
        "treat",
        "Blend rain or reverse-osmosis water into the tap water, and scrape the crust off; vinegar "
        "only on an empty, rinsed pot and never with bleach.",
    ),
    (
        "black_rot",
        "treat",
        "Cut well into sound tissue with a flamed blade, keep the wound dry and airy, and stand "
        "the plant apart: it spreads in shared water.",
    ),
    (
        "black_rot",
        "look_inside",
        "Look at the base and the roots today, cut every black part well into sound tissue with a "
        "flamed blade, and stand the plant apart: it spreads in shared water.",
    ),
    (
        "soft_rot",
        "look_inside",
        "Look at the base and the roots today, cut every soft part well into sound tissue with a "
        "flamed blade, and stand the plant apart.",
    ),
    (
        "fusarium",
        "look_inside",
        "Take the plant out of its pot, cut back until neither soft roots nor purple show, with a "
        "fresh blade for every cut, and stand the plant apart.",
    ),
    (
        "soft_rot",
        "treat",
        "Cut the soft part away well into sound tissue with a flamed blade, keep the leaves dry "
        "and airy, and stand the plant apart.",
    ),
    (
        "fusarium",
        "treat",
        "Cut the rhizome back until no purple shows, with a fresh blade for every cut; bin the "
        "rest and its granules, and stand the plant apart.",
    ),
    (
        "drought",
        "treat",
        "Water with clear water until the granules are damp all through, and only then feed; from "
        "now on water before it shrivels.",
    ),
    (
        "drought",
        "leave",
        "Leave it as it is, and look again in a month: some ridging at rest and some dry roots in "
        "the air are usual.",
    ),
    (
        "cold",
        "treat",
        "Move it to warmth, keep it on the dry side, and watch the marks for rot for three weeks.",
    ),
    (
        "heat",
        "treat",
        "Shade it, move the air, water in the cool of the morning, and leave the burnt parts on.",
    ),
    (
        "chewing_pest",
        "treat",
        "Look with a lamp at night, and under the pot; pick off what you find. A bait is used as "
        "its label says.",
    ),
    (
        "mites",
        "treat",
        "Wipe both sides of the leaves with a damp cloth, raise the humidity, stand the plant "
        "apart and look again every few days.",
    ),
    ("rest", "leave", "Let it go to rest: stop the feed now, and water less as the leaves fall."),
    (
        "medium_change",
        "leave",
        "Leave it in its new medium: humid air, weak feed, and a look for new tips in four weeks.",
    ),
    ("old_age", "leave", "Leave them: trim dead roots at the next repotting."),
)

# Why, by cause; the stage says its own part first.
WHY_CAUSE = (
    ("salt_line", "The ring stands above the granules, where a quick pour does not reach."),
    ("salty_pot", "Salt in the pot keeps water from the roots."),
    ("lime", "Lime does not wash out: the water has to change."),
    ("wet_rot", "Soft roots go on rotting in wet granules."),
    ("black_rot", "It moves fast, and through water."),
    ("fusarium", "It blocks the rhizome, and a blade carries it."),
    ("soft_rot", "It moves fast on wet leaves."),
    ("drought", "Feed on dry granules burns."),
    ("cold", "Cold damage goes on showing for days."),
    ("heat", "Scorched roots and leaves do not mend, what is green still works."),
    ("chewing_pest", "New tips are eaten first."),
    ("mites", "They multiply in dry warmth within a week or two."),
    ("rest", "Yellowing from the oldest leaf on is its season."),
    ("medium_change", "Old roots fail and new ones form for the new medium."),
    ("old_age", "Roots wear out and are replaced."),
    ("none_of_these", "Nothing that was looked for was found."),
    ("unsure", "Opposite causes look alike, so the next look is worth more than a guess."),
)
WHY_STAGE = (
    ("growing", "Rooted and growing, it can use water and shed it."),
    ("maturing", "What is left in the pot gets stronger as water is cut for the rest."),
    ("resting_bare", "Without leaves its roots are idle, and water rots them."),
    ("shoot_bare", "The shoot lives on the old bulb until its own roots are long."),
    ("resting", "Its roots go on working slowly, and a salty pot left to dry gets saltier."),
    ("shoot", "New growth starting is the moment when new granules harm least."),
    ("lost_roots", "Without roots it cannot drink: wet granules rot it, dry ones finish it."),
    ("rotting", "Rot goes on in wet granules, and a flush only wets them."),
)
NOT_NOW = (
    ("growing", "No repotting and no digging between living roots in mid-growth."),
    ("maturing", "No repotting, and no feed after the first yellow leaf."),
    ("resting_bare", "No flush, no water and no feed."),
    ("shoot_bare", "No flush, and no water or feed before the new roots are long enough."),
    ("resting", "No repotting, no full-strength feed, and nothing wet on a cold day."),
    ("shoot", "No flush before its new roots show, and no repotting in flower."),
    ("lost_roots", "No flush, no drying out, and no feed before new roots show."),
    ("rotting", "No flush, no feed, and no waiting."),
)
