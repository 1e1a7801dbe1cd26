"""Every calculator with the version of its method: the head of the page of changes."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from html import escape

from saltline.declare import Form


def methods_html(forms: Iterable[Form], home: Callable[[str], str]) -> str:
    """A table of question, name in links and version; `home` gives a calculator's page or ""."""
    body = "".join(_row(form, home(form.id)) for form in sorted(forms, key=lambda form: form.id))
    return (
        '<div class="salt-plain"><table data-narrow><thead><tr><th scope="col">Calculator</th>'
        '<th scope="col">Version</th></tr></thead>'
        f"<tbody>{body}</tbody></table></div>"
    )


def _row(form: Form, page: str) -> str:
    asked = escape(form.question)
    if page:
        asked = f'<a href="{escape(page)}#{form.id}">{asked}</a>'
    return f"<tr><td>{asked}<br><code>{form.id}</code></td><td>{form.version}</td></tr>"
