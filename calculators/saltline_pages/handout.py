"""The reader's own sheet: the element `salt-handout`, which holds the answers kept there."""

from __future__ import annotations


def handout_html() -> str:
    """The element with its form; the script puts the answers in."""
    sizes = "".join(
        f'<label class="salt-chip"><input type="radio" name="size" value="{size}"{checked}>'
        f"<span>{size.upper()}</span></label>"
        for size, checked in (("a4", " checked"), ("a5", ""))
    )
    return (
        '<salt-handout><form novalidate autocomplete="off" aria-label="Your sheet">'
        '<div class="salt-field"><label for="sheet-club">Name of the club, for the top</label>'
        '<div class="salt-box"><input id="sheet-club" name="club" maxlength="60"></div></div>'
        f'<fieldset class="salt-field"><legend>Paper</legend><div class="salt-chips">{sizes}</div>'
        "</fieldset>"
        '<div class="salt-actions"><button type="submit" class="salt-main">Print the sheet</button>'
        '<button type="button" data-do="clear">Take all off</button></div>'
        '<p class="salt-note" role="status"></p></form>'
        '<div class="salt-collected"></div></salt-handout>'
    )
