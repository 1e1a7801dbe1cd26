"""The finished site: the generator's pages, then one finishing step that knows no generator.

The step gives scripts and styles hashed names, puts the early start of the engine at the top of
each page that calculates, adds the content security policy, and makes links relative.
"""

from __future__ import annotations

import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
from base64 import b64encode
from collections.abc import Mapping
from dataclasses import dataclass
from html import escape
from pathlib import Path

from saltline.forms import all_forms
from saltline_pages import bundling, trust
from saltline_pages.calculator import modules
from saltline_pages.checks import rows
from saltline_pages.extension import ROOT as ROOT_MARK
from saltline_pages.full_engine import write_full_engine
from saltline_pages.lower import bundle

PROJECT = Path(__file__).resolve().parent.parent.parent
CALCULATOR = re.compile(r'<salt-calc name="([a-z0-9-]+)"')


def build_site(out: Path, site_url: str | None) -> None:
    """Write the finished site into `out`; with no `site_url` no absolute address is made."""
    shutil.rmtree(out, ignore_errors=True)
    generate(out, site_url)
    finish(out)


def generate(out: Path, site_url: str | None, generator: str = "mkdocs") -> None:
    """Run the site generator, in strict mode, on the committed configuration."""
    config = (PROJECT / "mkdocs.yml").read_text(encoding="utf-8")
    config = config.replace("docs_dir: docs", f"docs_dir: {PROJECT / 'docs'}")
    config += f"site_dir: {out}\n"
    if site_url:
        config += f"site_url: {site_url}\n"
    environment = os.environ | {
        "PYTHONPATH": str(PROJECT / "calculators"),
        "NO_MKDOCS_2_WARNING": "1",
        "DISABLE_MKDOCS_2_WARNING": "true",
    }
    with tempfile.TemporaryDirectory() as scratch:
        file = Path(scratch) / "mkdocs.yml"
        file.write_text(config, encoding="utf-8")
        done = subprocess.run(
            [sys.executable, "-m", generator, "build", "--strict", "--quiet", "-f", str(file)],
            env=environment,
            capture_output=True,
            text=True,
            check=False,
        )
    if done.returncode != 0:
        raise RuntimeError(f"{generator} did not build the pages:\n{done.stdout}{done.stderr}")


# Our elements and the script of each; a page gets one bundle of those it holds.
SCRIPTS = {
    "salt-calc": "salt-calc.js",
    "salt-trust": "salt-trust.js",
}
THEME_STYLE = re.compile(r'<link rel="stylesheet" href="([^"]*assets/stylesheets/[^"]+)">')
THEME_SCRIPT = re.compile(r'<script src="([^"]*assets/javascripts/bundle[^"]+)"></script>')


@dataclass(frozen=True)
class Assets:
    """The engine's parts, from the site's root, and the style that every page carries."""

    wasm: str
    worker: str
    style: str


def finish(out: Path) -> None:
    """The finishing step, on the built HTML."""
    pages = {page: page.read_text(encoding="utf-8") for page in sorted(out.rglob("*.html"))}
    # Without a site address the generator writes the missing page's links from the host's root.
    lost = out / "404.html"
    pages[lost] = re.sub(r'(href="|src="|"base": ")/', r"\1", pages[lost])
    assets = Assets(
        wasm=hashed(out, "engine.wasm", bundling.light_engine_wasm()),
        worker=hashed(out, "worker.js", bundling.script("worker.js")),
        style=theme_core(pages) + bundling.style("saltline.css").decode(),
    )
    shutil.rmtree(out / "assets" / "js", ignore_errors=True)
    shutil.rmtree(out / "assets" / "css", ignore_errors=True)
    for page, html in pages.items():
        page.write_text(finished(html, page, out, assets), encoding="utf-8")


def theme_core(pages: Mapping[Path, str]) -> str:
    """The part of the theme's styles that the built pages show, before its script adds more."""
    home = next(page for page in pages if page.name == "index.html")
    sheets = [(home.parent / path).resolve() for path in THEME_STYLE.findall(pages[home])]
    css = "".join(sheet.read_text(encoding="utf-8") for sheet in sheets)
    return bundling.used_rules(re.sub(r"/\*# sourceMapping.*?\*/", "", css), list(pages.values()))


def hashed(out: Path, name: str, content: bytes) -> str:
    """Write `content` under `assets/` with its hash in the name; the path from the root."""
    stem, dot, ending = name.rpartition(".")
    digest = hashlib.sha256(content).hexdigest()[:10]
    path = f"assets/{stem}.{digest}{dot}{ending}"
    (out / "assets").mkdir(exist_ok=True)
    (out / path).write_bytes(content)
    return path


def finished(html: str, page: Path, out: Path, assets: Assets) -> str:
    """One page with its scripts, styles, policy and relative links."""
    root = "../" * (len(page.relative_to(out).parts) - 1)
    theme = {"styles": THEME_STYLE.findall(html), "script": THEME_SCRIPT.findall(html)[0]}
    html = THEME_SCRIPT.sub("", THEME_STYLE.sub("", html))
    last = f'<script type="application/json" id="salt-theme">{json.dumps(theme)}</script>'
    scripts = ["page.js", *(file for tag, file in SCRIPTS.items() if f"<{tag}" in html)]
    own = hashed(out, "page.js", bundling.scripts(tuple(scripts)))
    last += f'<script type="module" src="{root}{own}"></script>'
    html = html.replace("</body>", f"{last}</body>")
    html = html.replace("</head>", f"<style>{assets.style}</style></head>", 1)
    html = html.replace(ROOT_MARK, root or "./")
    if trust.PARTS in html:
        html = html.replace(trust.PARTS, escape(json.dumps(trust_parts(out, root, assets))))
    ids = sorted(set(CALCULATOR.findall(html)))
    early = f"<script>{early_start(ids, out, root, assets)}</script>" if ids else ""
    # The policy must stand before the first script, and its hashes cover every inline one.
    rules = policy(html + early, engine=bool(ids) or "<salt-trust" in html)
    head = f'<meta charset="utf-8">{rules}{early}'
    return re.sub(r'<meta charset="utf-8">', lambda _: head, html, count=1)


def early_start(ids: list[str], out: Path, root: str, assets: Assets) -> str:
    """The inline script that begins to load the engine with this page's science only."""
    forms = all_forms()
    needed = set[str]().union(*(modules(forms[name]) for name in ids))
    science = science_of(needed, out)
    parts = {"wasm": root + assets.wasm, "worker": root + assets.worker, "science": root + science}
    return bundling.script("start.js", {"__ENGINE__": json.dumps(parts)}).decode().strip()


def science_of(needed: set[str], out: Path) -> str:
    """The lowered science of these modules as one file; its path from the root."""
    text = json.dumps(bundle(needed), separators=(",", ":"), ensure_ascii=False)
    return hashed(out, "science.json", text.encode())


def trust_parts(out: Path, root: str, assets: Assets) -> dict[str, object]:
    """What the page that runs the checks needs: both engines, all the science, the rows."""
    asked = {row.question()["function"].rpartition(".")[0] for row in rows()}
    full = write_full_engine(out)
    return {
        "wasm": root + assets.wasm,
        "worker": root + assets.worker,
        "science": root + science_of(asked | {"saltline.answering"}, out),
        "checks": root + hashed(out, "checks.json", trust.device_checks().encode()),
        "fullWorker": root + hashed(out, "full-worker.js", bundling.scripts(("full-worker.js",))),
        "full": full | {"base": f"{root}{full['base']}"},
    }


INLINE = re.compile(r"<script(?![^>]*\bsrc=)([^>]*)>(.*?)</script>", re.S)
INLINE_STYLE = re.compile(r"<style[^>]*>(.*?)</style>", re.S)


def policy(html: str, engine: bool) -> str:
    """The content security policy: this host only, and inline scripts by their hash."""
    scripts = [
        text
        for attributes, text in INLINE.findall(html)
        if "application/json" not in attributes and "application/ld+json" not in attributes
    ]
    wasm = " 'wasm-unsafe-eval'" if engine else ""
    rules = [
        "default-src 'none'",
        f"script-src 'self' {_hashes(scripts)}{wasm}",
        f"style-src 'self' {_hashes(INLINE_STYLE.findall(html))}",
        "img-src 'self' data:",
        "font-src 'self'",
        "connect-src 'self'",
        "worker-src 'self'",
        "manifest-src 'self'",
        "frame-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
    ]
    return f'<meta http-equiv="Content-Security-Policy" content="{"; ".join(rules)}">'


def _hashes(texts: list[str]) -> str:
    made = (b64encode(hashlib.sha256(text.encode()).digest()).decode() for text in texts)
    return " ".join(sorted({f"'sha256-{digest}'" for digest in made}))
