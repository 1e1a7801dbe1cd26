"""Drawings for a club's newsletter: one for each article, plain enough for a photocopier.

Nothing here runs in the page: the drawings stand in it from the build, in black on white.
"""

from __future__ import annotations

from saltline.pictures.drawing import area, box, dot, line, patterns, svg, text

WATER_MS_CM = 0.5  # what the pens of the first drawing stand in
SCALES = (500, 640, 700)  # ppm for 1 mS/cm


def curve(path: str, kind: str = "ink") -> str:
    """A line with bends, as path data."""
    return f'<path class="{kind}" d="{path}"/>'


def words(x: float, y: float, *lines: str) -> str:
    """Lines of words about a middle, the first in bold."""
    first, *more = lines
    made = text(x, y, first, "strong", "middle")
    return made + "".join(
        text(x, y + 17.0 * at_line, each, "", "middle") for at_line, each in enumerate(more, 1)
    )


def drops(x: float, *tops: float) -> str:
    """Drops of water below one another."""
    return "".join(
        curve(f"M{x:g} {y:g}c-3 5-4 7-4 9a4 4 0 0 0 8 0c0-2-1-4-4-9z", "ink thin") for y in tops
    )


def pot(x: float, top: float, half: float, foot: float, pattern: str) -> str:
    """A pot of granules about a middle x."""
    low = half - 10.0
    walls = ((x - half, top), (x - low, foot), (x + low, foot), (x + half, top))
    fill = top + 8.0
    share = 10.0 * 8.0 / (foot - top)
    inside = ((x - half + share, fill), *walls[1:3], (x + half - share, fill))
    rim = line(((x - half - 5.0, top), (x + half + 5.0, top)), "ink")
    return area(inside, "", pattern) + line(walls, "ink") + rim


def root(x: float, top: float, foot: float, half: float = 9.0) -> str:
    """A root with a round tip, pale inside."""
    bend = foot - 16.0
    outline = (
        f"M{x - half:g} {top:g}V{bend:g}Q{x - half:g} {foot:g} {x:g} {foot:g}"
        f"Q{x + half:g} {foot:g} {x + half:g} {bend:g}V{top:g}"
    )
    return f'<path class="card" d="{outline}Z"/>' + curve(outline)


def pens() -> str:
    """Three pens in one water, each with a number of its own."""
    parts = patterns("pens", "water")
    parts += area(((20.0, 134.0), (28.0, 176.0), (292.0, 176.0), (300.0, 134.0)), "", "pens-water")
    for x, factor in zip((60.0, 160.0, 260.0), SCALES):
        parts += box(x - 9.0, 100.0, 18.0, 52.0, "card") + box(x - 9.0, 100.0, 18.0, 52.0, "ink")
        parts += box(x - 26.0, 8.0, 52.0, 92.0, "card") + box(x - 26.0, 8.0, 52.0, 92.0, "ink")
        parts += box(x - 19.0, 17.0, 38.0, 24.0, "ink thin")
        parts += text(x, 34.0, f"{WATER_MS_CM * factor:g}", "strong", "middle")
        parts += text(x, 60.0, "ppm", "", "middle") + dot(x, 80.0, 6.0, "ink thin")
        parts += words(x, 197.0, f"{factor} scale")
    parts += line(((14.0, 112.0), (28.0, 176.0), (292.0, 176.0), (306.0, 112.0)), "ink")
    parts += line(((20.0, 134.0), (300.0, 134.0)), "ink thin")
    parts += text(160.0, 217.0, f"one water of {WATER_MS_CM:g} mS/cm", "", "middle")
    return svg(226.0, "Three pens in one water read three numbers.", parts)


def night() -> str:
    """A covered pot in the evening, and its first drips in the morning."""
    parts = patterns("night", "granules")
    parts += pot(80.0, 92.0, 42.0, 158.0, "night-granules")
    parts += curve("M74 92C70 60 58 46 46 42M84 92C84 58 100 36 122 28")
    parts += curve("M30 92C34 76 60 72 80 72C100 72 126 76 130 92", "ink thin dash")
    parts += curve("M16 8A13 13 0 1 0 29 25A10 10 0 0 1 16 8Z")
    parts += words(80.0, 196.0, "In the evening", "cover the pot")
    parts += pot(226.0, 58.0, 42.0, 118.0, "night-granules")
    parts += curve("M220 58C218 34 206 16 192 12M230 58C230 32 246 14 264 8")
    parts += drops(232.0, 124.0, 140.0)
    parts += line(((212.0, 142.0), (222.0, 176.0), (298.0, 176.0), (308.0, 142.0)), "ink")
    parts += curve("M217 158H303", "ink thin")
    parts += box(284.0, 134.0, 8.0, 32.0, "card") + box(284.0, 134.0, 8.0, 32.0, "ink")
    parts += box(277.0, 98.0, 22.0, 36.0, "card") + box(277.0, 98.0, 22.0, 36.0, "ink")
    parts += words(240.0, 196.0, "In the morning", "read the first drips")
    return svg(222.0, "A pot stands covered for a night; then its first drips are read.", parts)


# Salt left in the three pots, as places of grains beside a pot's middle.
LEFT = (
    ((-24, 92), (-12, 104), (0, 90), (12, 104), (24, 92), (-18, 118), (6, 120), (18, 118),
     (-8, 132), (10, 136)),
    ((-20, 96), (-4, 112), (14, 98), (-12, 130), (12, 130)),
    ((-10, 112), (12, 124)),
)  # fmt: skip


def pours() -> str:
    """Three pours with an hour between, and less salt each time."""
    parts = ""
    for number, (x, grains) in enumerate(zip((52.0, 160.0, 268.0), LEFT), 1):
        parts += drops(x - 14.0, 40.0) + drops(x, 30.0, 48.0) + drops(x + 14.0, 40.0)
        parts += pot(x, 72.0, 38.0, 146.0, "")
        parts += "".join(dot(x + dx, y, 3.5, "full") for dx, y in grains)
        parts += curve(f"M{x - 44:g} 156L{x - 36:g} 170H{x + 36:g}L{x + 44:g} 156")
        parts += words(x, 192.0, f"pour {number}")
    for x in (106.0, 214.0):
        parts += dot(x, 30.0, 15.0, "ink") + curve(f"M{x:g} 20V30L{x + 7:g} 34", "ink thin")
        parts += text(x, 62.0, "1 h", "", "middle")
    return svg(200.0, "Three slow pours with an hour's rest between, each with its basin.", parts)


def roots() -> str:
    """Three kinds of black on a root, and what each speaks for."""
    parts = patterns("roots", "granules", "band")
    parts += box(14.0, 92.0, 292.0, 84.0, "", "roots-granules")
    parts += line(((10.0, 20.0), (14.0, 176.0), (306.0, 176.0), (310.0, 20.0)), "ink")
    for x in (60.0, 160.0, 260.0):
        parts += root(x, 8.0, 156.0)
    parts += box(51.0, 62.0, 18.0, 26.0, "full")
    parts += '<path class="full" d="M151 128V140Q151 156 160 156Q169 156 169 140V128Z"/>'
    parts += box(252.0, 96.0, 16.0, 48.0, "", "roots-band")
    parts += curve("M251 96Q255 104 260 98Q265 104 269 96M260 102V148")
    parts += curve("M280 84q6-5 0-11q-6-6 0-11M294 84q6-5 0-11q-6-6 0-11", "ink thin")
    parts += words(60.0, 197.0, "one band", "perhaps salt")
    parts += words(160.0, 197.0, "only the tip", "salt or dry air")
    parts += words(260.0, 197.0, "soft, sour", "rot")
    return svg(222.0, "A band above the granules, a dead tip, and a soft, sour root.", parts)


def beads() -> str:
    """A bag of beads on top of the granules, with its tag."""
    parts = patterns("beads", "granules")
    parts += pot(110.0, 100.0, 78.0, 196.0, "beads-granules")
    parts += root(84.0, 108.0, 172.0, 5.0) + root(114.0, 108.0, 184.0, 5.0)
    parts += curve("M96 100C94 60 66 34 36 26M104 100C108 56 92 24 76 8")
    parts += curve("M126 104C118 84 128 70 146 68C166 68 174 86 166 104Z")
    places = ((136, 96), (146, 92), (156, 96), (141, 84), (152, 83), (147, 100), (160, 88))
    parts += "".join(dot(float(x), float(y), 4.0, "ink thin") for x, y in places)
    parts += curve("M146 68L140 58M148 68L154 57M147 68C170 50 186 58 204 60", "ink thin")
    parts += curve("M204 60L218 34H312V86H218Z")
    parts += dot(216.0, 60.0, 3.0, "ink thin")
    parts += text(228.0, 56.0, "12 beads", "strong") + text(228.0, 75.0, "till autumn")
    parts += text(206.0, 136.0, "in a bag,") + text(206.0, 153.0, "on top")
    parts += text(206.0, 178.0, "out before", "strong") + text(206.0, 195.0, "the rest", "strong")
    return svg(206.0, "A mesh bag of beads on the granules, with a tag that counts them.", parts)


DRAWINGS = {"pens": pens, "night": night, "pours": pours, "roots": roots, "beads": beads}
