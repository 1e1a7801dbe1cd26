"""What can be seen of a damaged plant, and which causes each sign speaks for: data.

Weights are small whole numbers and proposed (unpublished): plus speaks for a cause, minus against
it. A key built on them may say only what survives every weight being off by one.
"""

from __future__ import annotations

from typing import NamedTuple


class Sign(NamedTuple):
    """One thing to look for.

    `where`: plant, test (of the medium or its water), weather, or context (how it is kept).
    `line`: signs of one line are one piece of evidence, however many are ticked.
    `cost`: 0 look or remember, 1 touch or a spoon, 3 unpot or a night and a pen, 9 wound it.
    `yes`, `no`: (cause, weight) for either answer.
    """

    id: str
    where: str
    line: str
    cost: int
    label: str
    yes: tuple[tuple[str, int], ...]
    no: tuple[tuple[str, int], ...]
    evidence: str
    source: str


CAUSES = (
    ("salt_line", "salt at the drying line"),
    ("salty_pot", "the whole pot too salty"),
    ("lime", "lime from hard water"),
    ("wet_rot", "wet rot (roots without air)"),
    ("black_rot", "black rot (water moulds)"),
    ("fusarium", "Fusarium wilt"),
    ("soft_rot", "bacterial soft rot"),
    ("drought", "drought"),
    ("cold", "cold"),
    ("heat", "heat or sun"),
    ("chewing_pest", "a chewing pest"),
    ("mites", "mites"),
    ("rest", "the seasonal rest"),
    ("medium_change", "the change of medium"),
    ("old_age", "old age of the roots"),
    ("none_of_these", "none of these"),
)
ROT_CAUSES = ("wet_rot", "black_rot", "fusarium", "soft_rot")
SALT_CAUSES = ("salt_line", "salty_pot")

# Any of these forbids "leave" and "flush", whatever else is ticked.
ROT_SIGNS = (
    "soft_skin_slides",
    "sour_smell",
    "black_spreading",
    "shrivelled_wet",
    "soft_leaf_spots",
)
# A salt cause is firm only with one of these.
SALT_TESTS = ("crust_dissolves", "rested_drip_high")
# Two of a pair cannot both be true: ticked together, neither counts.
EXCLUSIVE = (
    ("rested_drip_high", "rested_drip_low"),
    ("many_pots_same_feed", "one_pot_only"),
    ("shrivelled_wet", "shrivelled_dry"),
)

# fmt: off
SIGNS = (
    Sign("dark_band_above_medium", "plant", "ring", 0,
         "Dark ring on several roots at one height, just above the medium",
         (("salt_line", 4), ("lime", 1), ("wet_rot", -1), ("black_rot", -1)), (("salt_line", -4),),
         "no orchid study; crusted rims scorch what touches them, on other plants",
         "bay-weekly-2007"),
    Sign("tips_dead", "plant", "tips", 0,
         "Only the root tips dead, the root behind them firm",
         (("salty_pot", 3), ("heat", 1), ("drought", 1), ("wet_rot", -1)), (("salty_pot", -1),),
         "first sign of over-salting", "aos-fertilizer-burn"),
    Sign("brown_inside_pot", "plant", "inside", 3,
         "Roots brown inside the pot, those in the air sound",
         (("salty_pot", 1), ("wet_rot", 1), ("medium_change", 1)),
         (("salty_pot", -1), ("wet_rot", -2), ("medium_change", -1)),
         "does not decide by itself", "plant-questions"),
    Sign("worst_at_bottom", "plant", "inside", 3,
         "Worst at the bottom of the pot or at the reservoir level",
         (("wet_rot", 2), ("salt_line", -2)), (),
         "air is shortest lowest down (inference)", "saltline-notes"),
    Sign("air_roots_dry_back", "plant", "air roots", 0,
         "Roots in the air dry back",
         (("drought", 3), ("heat", 1), ("salty_pot", -1), ("wet_rot", -2)), (),
         "dies back below about 40 % humidity, sound roots in the pot", "orchid-forum"),
    Sign("soft_skin_slides", "plant", "feel", 1,
         "Dead roots soft, the skin slides off the core",
         (("wet_rot", 4), ("drought", -3), ("salty_pot", -2), ("salt_line", -1),
          ("medium_change", -1)),
         (("wet_rot", -3),),
         "the sign most often given for rot", "root-health-pages"),
    Sign("hollow_papery", "plant", "feel", 1,
         "Dead roots hollow, dry and stiff",
         (("drought", 2), ("old_age", 1), ("medium_change", 1), ("salty_pot", 1), ("wet_rot", -2)),
         (),
         "drought, or old rot dried out: not decisive", "plant-questions"),
    Sign("firm_dark", "plant", "feel", 1,
         "Roots dark but firm",
         (("wet_rot", -3), ("black_rot", -2)), (),
         "may be natural or a stain; firmness decides", "root-health-pages"),
    Sign("sour_smell", "plant", "smell", 1,
         "Sour or foul smell",
         (("wet_rot", 3), ("soft_rot", 2), ("drought", -3)), (("wet_rot", -1),),
         "rot smells, drought does not", "root-health-pages"),
    Sign("crust_dissolves", "test", "crust", 1,
         "Crust dissolves in a spoon of pure water and raises its reading",
         (("salt_line", 4), ("salty_pot", 4)), (("salt_line", -2), ("salty_pot", -2)),
         "fertilizer salt dissolves; lime and gypsum hardly", "umd-deposits"),
    Sign("crust_fizzes", "test", "crust", 1,
         "Fresh crust fizzes under a drop of vinegar (never with bleach)",
         (("lime", 4),), (("lime", -4),),
         "carbonate fizzes", "umd-deposits"),
    Sign("rested_drip_high", "test", "reading", 3,
         "First drips after standing covered overnight: more than feed + 0.5 mS/cm",
         (("salty_pot", 4), ("salt_line", 1)), (("salty_pot", -2),),
         "root mass falls as the water's salt rises; the 0.5 is a trade figure for other crops",
         "wang-1998"),
    Sign("rested_drip_low", "test", "reading", 3,
         "First drips after standing covered overnight: at feed strength or less",
         (("salty_pot", -4),), (),
         "clears the pot, never the line above it (inference)", "saltline-notes"),
    Sign("many_pots_same_feed", "context", "context", 0,
         "Many pots on the same feed have it",
         (("salty_pot", 1), ("salt_line", 1), ("lime", 1),
          ("chewing_pest", -1), ("black_rot", -1), ("fusarium", -1)),
         (),
         "inference", "saltline-notes"),
    Sign("one_pot_only", "context", "context", 0,
         "One pot only has it",
         (("wet_rot", 1), ("chewing_pest", 1), ("salty_pot", -1)), (),
         "inference", "saltline-notes"),
    Sign("cold_night", "weather", "weather", 0,
         "Cold night, cold glass or ice-cold water in the last three weeks",
         (("cold", 3),), (("cold", -2),),
         "below 10 °C for warm growers; cool growers stand it", "palomar-monthly"),
    Sign("sunk_pits", "plant", "leaf pits", 0,
         "Sunken pits or grey patches on leaves",
         (("cold", 4), ("mites", 1)), (("cold", -1),),
         "cell collapse from cold air or water; shows days later", "ifas-pp265"),
    Sign("hot_day", "weather", "weather", 0,
         "Above 35 °C at the pot, or sun on roots or pot",
         (("heat", 3), ("drought", 1), ("salty_pot", 1)), (("heat", -2),),
         "upper day temperature; scorched plants burn more easily", "clarke-2012"),
    Sign("tips_bitten", "plant", "tips", 0,
         "Tips missing overnight, slime, droppings or small snails",
         (("chewing_pest", 5),), (("chewing_pest", -3),),
         "eat roots and tender growth at night", "aos-snails"),
    Sign("purple_ring", "plant", "cut", 9,
         "Purple or pink ring in a fresh cut of the rhizome",
         (("fusarium", 7),), (("fusarium", -5),),
         "the classic sign; growers say it is called too often", "fungal-rots-2010"),
    Sign("black_spreading", "plant", "black", 0,
         "Black wet area that moves, leaf falls at a touch",
         (("black_rot", 5), ("soft_rot", 1)), (("black_rot", -4),),
         "spots enlarge rapidly, soft and weeping", "aos-black-rot"),
    Sign("leaf_tips_dry", "plant", "leaf tips", 0,
         "Leaf tips dry and brown with a sharp edge",
         (("salty_pot", 1), ("drought", 1), ("lime", 1)), (),
         "drying between waterings as much as feed", "aos-leaftip-burn"),
    Sign("oldest_leaves_yellow", "plant", "old leaves", 0,
         "Oldest leaves yellow and fall, bulbs fat",
         (("rest", 4), ("old_age", 1), ("mites", 1)), (("rest", -3),),
         "leaves yellow and fall after the bulb matures", "aos-catasetum-sheet"),
    Sign("shrivelled_wet", "plant", "shrivel", 1,
         "Bulbs or leaves shrivelled although the medium is wet",
         (("wet_rot", 3), ("fusarium", 2), ("salty_pot", 2), ("drought", -3)), (),
         "root loss and salt look alike from above", "orchid-forum"),
    Sign("shrivelled_dry", "plant", "shrivel", 1,
         "Shrivelled, and the pot is light",
         (("drought", 3), ("rest", 1), ("wet_rot", -2)), (),
         "weigh the pot; some ridging at rest is normal", "growers-diaries"),
    Sign("repotted_lately", "context", "context", 0,
         "Repotted or moved to another medium within eight weeks",
         (("medium_change", 3),), (("medium_change", -4),),
         "old roots fail, new ones must form for the new medium", "saltline-notes"),
    Sign("fed_from_below", "context", "context", 0,
         "Fed by saucer, reservoir or wick, seldom flushed from the top",
         (("salt_line", 2), ("salty_pot", 1)), (),
         "no bottom watering, says the advice on deposits", "umd-deposits"),
    Sign("live_prills", "context", "context", 0,
         "Slow-release beads in the pot, and warm weeks",
         (("salty_pot", 2), ("salt_line", 1)), (),
         "drain water follows the heat two to four weeks later", "hortsci-42-661"),
    Sign("few_roots", "context", "context", 0,
         "Few living roots for the pot",
         (("salt_line", 1), ("salty_pot", 1)), (("salt_line", -1), ("salty_pot", -1)),
         "nothing takes up what the feed and the beads give", "common-practice"),
    Sign("softened_water", "context", "context", 0,
         "Water from a household softener used",
         (("salty_pot", 2),), (),
         "sodium in place of calcium", "saltline-notes"),
    Sign("unfed_and_flushed", "context", "context", 0,
         "No feed for four weeks and well flushed, still getting worse",
         (("salty_pot", -3), ("salt_line", -2)), (),
         "one grower stopped feed for two months: no change", "orchid-forum"),
    Sign("roots_branch_behind_tip", "plant", "branching", 0,
         "Damaged roots branch behind the dead tip",
         (("salty_pot", 1), ("heat", 1), ("chewing_pest", 1),
          ("wet_rot", -2), ("black_rot", -2), ("fusarium", -2)),
         (),
         "the root behind is alive", "orchid-forum"),
    Sign("stippled_leaves", "plant", "leaf skin", 0,
         "Leaves finely stippled or silvery underneath",
         (("mites", 4),), (("mites", -3),),
         "mites empty the cells of the surface", "aos-mites"),
    Sign("webbing", "plant", "webs", 0,
         "Fine webs, or a brown streak on a white tissue wiped under the leaf",
         (("mites", 4),), (),
         "some mites make no web", "aos-mites"),
    Sign("soft_leaf_spots", "plant", "leaf spots", 0,
         "Soft, watery spots on leaves",
         (("soft_rot", 4), ("black_rot", 2), ("cold", 1), ("heat", 1)), (("soft_rot", -3),),
         "water-soaked spots that grow", "soft-rot-pages"),
    Sign("old_roots_only", "plant", "which roots", 3,
         "Only the oldest roots are dead, new ones grow",
         (("old_age", 4), ("medium_change", 2), ("salty_pot", -2)), (("old_age", -3),),
         "roots wear out and are replaced", "growers-diaries"),
)
# fmt: on
