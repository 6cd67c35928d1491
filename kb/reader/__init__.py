"""From a person's words to a structured question: tokens, pieces, meaning, gate, query.

The stages run in one direction (`tokens`, `cover`, `fold`, `naming`, `frame`, `roles`, `gate`, `query`); each
is pure and knows nothing of a particular service. What is not understood is named, never dropped.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from kb.lazy import loader

if TYPE_CHECKING:
    from kb.reader.adjuncts import without_adjuncts
    from kb.reader.fits import facts_that_matter
    from kb.reader.further import is_thanks
    from kb.reader.lexicon import Lexicon
    from kb.reader.patter import of_another_matter
    from kb.reader.question import read_question
    from kb.reader.reply import read_reply
    from kb.reader.said_once import shared
    from kb.reader.several import each_thing
    from kb.reader.split import may_claim, split_questions
    from kb.reader.statement import parse_fact, read_statement
    from kb.reader.turn import put_right, read_turn

__all__ = [
    "Lexicon",
    "each_thing",
    "facts_that_matter",
    "is_thanks",
    "may_claim",
    "of_another_matter",
    "parse_fact",
    "put_right",
    "read_question",
    "read_reply",
    "read_statement",
    "read_turn",
    "shared",
    "split_questions",
    "without_adjuncts",
]

__getattr__ = loader(
    __name__,
    {
        "kb.reader.adjuncts": ("without_adjuncts",),
        "kb.reader.fits": ("facts_that_matter",),
        "kb.reader.further": ("is_thanks",),
        "kb.reader.lexicon": ("Lexicon",),
        "kb.reader.patter": ("of_another_matter",),
        "kb.reader.question": ("read_question",),
        "kb.reader.reply": ("read_reply",),
        "kb.reader.said_once": ("shared",),
        "kb.reader.several": ("each_thing",),
        "kb.reader.split": ("may_claim", "split_questions"),
        "kb.reader.statement": ("parse_fact", "read_statement"),
        "kb.reader.turn": ("put_right", "read_turn"),
    },
)
