"""What stays on the reader's device: the list for the service worker, and the line that says so."""

from __future__ import annotations

import hashlib
import json
import re
from base64 import b64encode
from collections.abc import Mapping
from datetime import date
from pathlib import Path

from saltline_pages import bundling

LEFT_OUT = re.compile(r"sw\.js|sitemap\.xml(\.gz)?")
# Fetched when first asked for: papers to print, what runs the checks, the wording of licences, and
# what only programs read (schemas, pictures for messengers and for the start screen).
LATER = re.compile(
    r".*\.(pdf|zip)|assets/(full|checks|previews).*|assets/icons/.*\.png|licences/.*\.txt|schemas/.*"
)
FOOT = '<div class="md-copyright">'


def address(file: Path, out: Path) -> str:
    """A file's address within the site: a folder for its index page."""
    return re.sub(r"(^|/)index\.html$", r"\1", file.relative_to(out).as_posix())


def kept_files(out: Path) -> tuple[list[Path], list[Path]]:
    """The files that are fetched at once, and those that wait until they are asked for."""
    files = [file for file in sorted(out.rglob("*")) if file.is_file()]
    files = [file for file in files if not LEFT_OUT.fullmatch(address(file, out))]
    later = [file for file in files if LATER.fullmatch(address(file, out))]
    return [file for file in files if file not in later], later


def with_feet(pages: Mapping[Path, str], out: Path, built: date) -> dict[Path, str]:
    """Pages whose footers say how old this copy is; `offline.js` adds whether it is kept."""
    others = [file for file in kept_files(out)[0] if file not in pages]
    size = sum(file.stat().st_size for file in others) + sum(len(html) for html in pages.values())
    feet = {}
    for page, html in pages.items():
        root = "../" * (len(page.relative_to(out).parts) - 1)
        feet[page] = html.replace(FOOT, FOOT + foot(root, size, built), 1)
    return feet


def foot(root: str, size: int, built: date) -> str:
    """The lines in a footer; `root` leads to the site's, whose copy has `size` bytes."""
    made = f'<time datetime="{built.isoformat()}">{built.day} {built:%B %Y}</time>'
    return (
        f'<p class="salt-copy" data-worker="{root}sw.js" data-size="{size / 1e6:.0f} MB">'
        f'This copy was made on {made}. <span role="status"></span></p>'
        f'<p><a href="{root}licences/">What this site is built with</a></p>'
    )


def write_service_worker(out: Path) -> None:
    """Write `sw.js`, with the SHA-256 of every file; the last step of a build."""
    now, later = kept_files(out)
    script = bundling.script("sw.js").decode()
    for mark, files in (("__KEPT__", now), ("__LATER__", later)):
        hashes = {address(file, out): _digest(file) for file in files}
        script = script.replace(mark, json.dumps(hashes, ensure_ascii=False), 1)
    (out / "sw.js").write_text(script, encoding="utf-8")


def _digest(file: Path) -> str:
    return b64encode(hashlib.sha256(file.read_bytes()).digest()).decode()
