"""The content security policy of a page: this host only, and inline scripts by their hash."""

from __future__ import annotations

import hashlib
import re
from base64 import b64encode

INLINE = re.compile(r"<script(?![^>]*\bsrc=)([^>]*)>(.*?)</script>", re.S)
INLINE_STYLE = re.compile(r"<style[^>]*>(.*?)</style>", re.S)


def policy(html: str, engine: bool) -> str:
    """The policy as a meta tag; `engine`: whether WebAssembly may be compiled on this page."""
    scripts = [text for attributes, text in INLINE.findall(html) if "json" not in attributes]
    wasm = ["'wasm-unsafe-eval'"] if engine else []
    rules = [
        "default-src 'none'",
        " ".join(["script-src 'self'", *_hashes(scripts), *wasm]),
        " ".join(["style-src 'self'", *_hashes(INLINE_STYLE.findall(html))]),
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


def _hashes(texts: list[str]) -> list[str]:
    made = (b64encode(hashlib.sha256(text.encode()).digest()).decode() for text in texts)
    return sorted({f"'sha256-{digest}'" for digest in made})
