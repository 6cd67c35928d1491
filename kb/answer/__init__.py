"""From a structured query to an answer: frozen data that screens and documents render."""

from kb.answer.assemble import answer_query
from kb.answer.encode import answer_to_json

__all__ = ["answer_query", "answer_to_json"]
