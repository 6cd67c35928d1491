"""The meaning of rules once more, as plainly as can be: slow, and apart from the reasoner.

It is what saved answers are checked with.
"""

from kb.plain.asking import VERDICTS, Question, is_sound
from kb.plain.cases import Effect, Known
from kb.plain.ranging import Range
from kb.plain.saved import facts_from_json, values_from_json
from kb.plain.sets import NONE
from kb.plain.values import has_whole_number
from kb.plain.weighing import Fate, Truth, opposed

__all__ = [
    "NONE",
    "VERDICTS",
    "Effect",
    "Fate",
    "Known",
    "Question",
    "Range",
    "Truth",
    "facts_from_json",
    "has_whole_number",
    "is_sound",
    "opposed",
    "values_from_json",
]
