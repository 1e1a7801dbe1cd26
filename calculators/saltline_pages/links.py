"""Share links: the fragment that carries a calculator's inputs and its method's version.

`#ID=VERSION;name=value;name=value`, in letters, digits and `. _ - ~ ; = ,` only; anything else in a
value is written as `~` and two hex digits a byte. The other half is docs/assets/js/link.js.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from saltline.declare import Form

PLAIN = re.compile(r"[A-Za-z0-9._-]")


def fragment(form: Form, inputs: Mapping[str, Any]) -> str:
    """The fragment, with its `#`, for these inputs (empty ones are left out)."""
    parts = [f"{form.id}={form.version}"]
    for item in form.inputs:
        value = inputs.get(item.name)
        if value is not None:
            parts.append(f"{item.name}={escaped(value)}")
    return "#" + ";".join(parts)


def escaped(value: Any) -> str:
    """A value in the link's alphabet."""
    if isinstance(value, list | tuple):
        return ",".join(escaped(part) for part in value)
    if isinstance(value, float | int):
        value = _number(float(value))
    return "".join(
        sign if PLAIN.fullmatch(sign) else "".join(f"~{byte:02X}" for byte in sign.encode())
        for sign in str(value)
    )


def _number(value: float) -> str:
    """All figures of a number, written as JavaScript writes it."""
    if value == 0 or 1e-6 <= abs(value) < 1e21:
        return f"{Decimal(repr(value)).normalize():f}"
    mantissa, _, exponent = repr(value).partition("e")
    return f"{mantissa.removesuffix('.0')}e{int(exponent)}"
