"""Every calculator's declaration, one module a topic; each module lists its own in `FORMS`."""

from __future__ import annotations

import importlib
import pkgutil

from saltline.declare import Form


def all_forms() -> dict[str, Form]:
    """Every declared calculator by its id, sorted; a module without `FORMS` serves the others."""
    found: dict[str, Form] = {}
    for module in pkgutil.iter_modules(__path__):
        loaded = importlib.import_module("saltline.forms." + module.name)
        for form in getattr(loaded, "FORMS", ()):
            if form.id in found:
                raise ValueError("two calculators are called " + form.id)
            found[form.id] = form
    return dict(sorted(found.items()))
