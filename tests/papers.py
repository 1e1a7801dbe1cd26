"""A PDF as a test sees it, by PDFium: its pages, words, sizes of type, and the codes on it."""

from __future__ import annotations

import ctypes
import math
from collections.abc import Iterator
from pathlib import Path

import pypdfium2
import zxingcpp
from pypdfium2 import raw

POINTS_OF_A4 = (595, 842)
DPI = 300


class Paper:
    def __init__(self, file: Path) -> None:
        self.document = pypdfium2.PdfDocument(file)
        self.sizes = [tuple(map(round, page.get_size())) for page in self.document]
        self.texts = [page.get_textpage().get_text_range() for page in self.document]
        # PDFium writes U+FFFE for a hyphen at the end of a line.
        self.text = " ".join(" ".join(self.texts).replace("\ufffe", "-").split())

    def types(self) -> Iterator[float]:
        """The size in points of every sign that is printed."""
        for page in self.document:
            words = page.get_textpage()
            matrix = raw.FS_MATRIX()
            for at in range(words.count_chars()):
                if words.get_text_range(at, 1).strip():
                    raw.FPDFText_GetMatrix(words, at, ctypes.byref(matrix))
                    size = raw.FPDFText_GetFontSize(words, at)
                    yield size * math.sqrt(abs(matrix.a * matrix.d - matrix.b * matrix.c))

    def codes(self) -> set[str]:
        """What the QR codes say."""
        drawn = (page.render(scale=DPI / 72).to_pil() for page in self.document)
        return {code.text for picture in drawn for code in zxingcpp.read_barcodes(picture)}
