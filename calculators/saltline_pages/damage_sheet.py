"""The whole damage key on paper: the same signs, causes and actions, for a wall by the bench."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape

from saltline.damage_signs import CAUSES, ROT_SIGNS, SIGNS, Sign
from saltline.forms.choices import STAGES
from saltline.pictures.signs import sketch
from saltline.stage_action import stage_action, what_to_do
from saltline.words.damage_how import HOW
from saltline_pages import sheets
from saltline_pages.cite import Source

TESTS = ("crust_dissolves", "crust_fizzes", "rested_drip_high")  # their how is printed
STRONG = 4  # the weight from which a sign is printed as a strong one
SPEAKS = 2  # and the least that is printed at all
LOOK = (
    ("Look: the roots", ("ring", "tips", "air roots", "branching", "inside", "which roots")),
    ("Smell and squeeze", ("feel", "smell", "shrivel")),
    ("Look: leaves and base", ("black", "leaf pits", "leaf tips", "old leaves", "leaf skin", "webs",
                               "leaf spots")),
    ("What happened, how is it kept?", ("weather", "context")),
    ("Test", ("crust", "reading", "cut")),
)  # fmt: skip
RULES = (
    "Stage first: it decides what may be done at all.",
    "A sign marked ▲ is a sign of rot: look inside today, no soaking, no leaving it.",
    "Tick what you see. Beside each sign stands what it speaks for; what stands in bold, it speaks "
    "for strongly.",
    "A cause is firm when two different signs speak for it, one of them on the plant, and no other "
    "cause has as much. Salt needs a test as well: the crust, or the first drips.",
    "Ticks about how it is kept help a little, all together; they never decide.",
    "Not sure? Do the test that parts the two leaders, and nothing that cannot be undone.",
)


def sheet_html(sources: Mapping[str, Source], root: str) -> str:
    """The sheets."""
    rules = "".join(f"<li>{rule}</li>" for rule in RULES)
    works = sheets.works_by_level((sign.source for sign in SIGNS), sources, root)
    return (
        f'<div class="salt-sheet">{sheets.head()}'
        f"<ol>{rules}</ol>{_stages()}{_groups()}{_actions()}<p>The weights behind it are our "
        "estimate, and nobody has tried it blind on real plants yet.</p>"
        f"{works}</div>"
    )


def _groups() -> str:
    return "".join(
        f'<h2>{title}</h2><ul class="salt-signs">'
        + "".join(_sign(sign) for line in lines for sign in SIGNS if sign.line == line)
        + "</ul>"
        for title, lines in LOOK
    )


def _sign(sign: Sign) -> str:
    mark = "▲ " if sign.id in ROT_SIGNS else ""
    how = f" {escape(dict(HOW)[sign.id])}" if sign.id in TESTS else ""
    return (
        f'<li><span class="salt-sketch">{sketch(sign.id)}</span><span>{mark}{escape(sign.label)}.'
        f"{how} <i>{_speaks(sign)}</i></span></li>"
    )


def _speaks(sign: Sign) -> str:
    causes = dict(CAUSES)
    named = [
        f"<b>{causes[name]}</b>" if weight >= STRONG else causes[name]
        for name, weight in sorted(sign.yes, key=lambda pair: -pair[1])
        if weight >= SPEAKS
    ]
    against = [causes[name] for name, weight in sign.yes if weight <= -STRONG]
    if not named and not against:
        named = [causes[name] for name, weight in sign.yes if weight > 0]
    said = (["→ " + ", ".join(named)] if named else []) + [f"not {name}" for name in against]
    return "; ".join(said) or "does not decide"


def _stages() -> str:
    stages = "".join(
        f"<li><b>{escape(option.label)}.</b> {_stops(option.value)}</li>" for option in STAGES
    )
    return f"<h2>What this stage forbids</h2><ul>{stages}</ul>"


def _actions() -> str:
    causes = "".join(
        f"<li><b>{text[0].upper() + text[1:]}.</b> {_does(name)}</li>" for name, text in CAUSES[:-1]
    )
    return f"<h2>What to do, in growth</h2><ul>{causes}</ul>"


def _stops(stage: str) -> str:
    """The same for kinds that drop all their leaves and for others, where they differ."""
    bare, other = (
        stage_action(kind=kind, stage=stage, cause="unsure", hemisphere="north").not_now
        for kind in ("deciduous", "evergreen")
    )
    return bare if bare == other else f"If it drops all its leaves: {bare} Else: {other}"


def _does(cause: str) -> str:
    action = stage_action(kind="evergreen", stage="growing", cause=cause, hemisphere="north").action
    return what_to_do(stage="growing", cause=cause, action=action)
