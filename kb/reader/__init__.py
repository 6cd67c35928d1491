"""From a person's words to a structured question: tokens, pieces, meaning, gate, query.

The stages run in one direction (`tokens`, `cover`, `fold`, `naming`, `frame`, `roles`, `gate`, `query`); each
is pure and knows nothing of a particular service. What is not understood is named, never dropped.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from kb.lazy import loader

if TYPE_CHECKING:
    from kb.reader.adjuncts import without_adjuncts
    from kb.reader.meaning.fits import facts_that_matter
    from kb.reader.meaning.several import each_thing
    from kb.reader.names.lexicon import Lexicon
    from kb.reader.question import read_question
    from kb.reader.talks.framed import leading_on
    from kb.reader.talks.further import is_thanks
    from kb.reader.talks.patter import of_another_matter
    from kb.reader.talks.reply import read_reply
    from kb.reader.talks.said_once import gone_on_from, shared
    from kb.reader.talks.settled import put_right
    from kb.reader.talks.statement import parse_fact, read_statement
    from kb.reader.talks.talked import Talk
    from kb.reader.talks.turn import read_turn
    from kb.reader.words.split import may_claim, may_deny, split_questions

__all__ = [
    "Lexicon",
    "Talk",
    "each_thing",
    "facts_that_matter",
    "gone_on_from",
    "is_thanks",
    "leading_on",
    "may_claim",
    "may_deny",
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
        "kb.reader.meaning.fits": ("facts_that_matter",),
        "kb.reader.talks.framed": ("leading_on",),
        "kb.reader.talks.further": ("is_thanks",),
        "kb.reader.names.lexicon": ("Lexicon",),
        "kb.reader.talks.patter": ("of_another_matter",),
        "kb.reader.question": ("read_question",),
        "kb.reader.talks.reply": ("read_reply",),
        "kb.reader.talks.said_once": ("gone_on_from", "shared"),
        "kb.reader.meaning.several": ("each_thing",),
        "kb.reader.words.split": ("may_claim", "may_deny", "split_questions"),
        "kb.reader.talks.statement": ("parse_fact", "read_statement"),
        "kb.reader.talks.settled": ("put_right",),
        "kb.reader.talks.talked": ("Talk",),
        "kb.reader.talks.turn": ("read_turn",),
    },
)
