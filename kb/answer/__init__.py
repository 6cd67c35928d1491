"""From a structured query to an answer: frozen data that screens and documents render."""

from __future__ import annotations

from typing import TYPE_CHECKING

from kb.lazy import loader

if TYPE_CHECKING:
    from kb.answer.assemble import answer_query
    from kb.answer.encode import answer_to_json

__all__ = ["answer_query", "answer_to_json"]

__getattr__ = loader(
    __name__, {"kb.answer.assemble": ("answer_query",), "kb.answer.encode": ("answer_to_json",)}
)
