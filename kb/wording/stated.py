"""Where, how and how many, of a table: what must be so, and when, in place of what it depends on.

"The device must be worn above the pocket, unless the wearer wears the badge" tells what is asked for first.
Every sentence holds for itself, so that those of several aspects may stand side by side.
"""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.lookup import Lookup
from kb.model.questions import AnswerCase, Query
from kb.wording.cases import Facts
from kb.wording.unless import ordinary_rows, say_exceptions, say_joined, usually_in
from kb.wording.verdicts import say_values_of

_MOST = 3  # statements with conditions of their own
_LONGEST = 520  # characters of all of them
_UNLESS = "unless "


def say_stated(lookup: Lookup, query: Query, tables: Sequence[Sequence[AnswerCase]]) -> str:
    """What each table says and when; nothing where that takes too many words, or a row is folded."""
    if query.kind not in ("where", "how", "how_many") or query.value is not None or not query.items:
        return ""
    lines: list[tuple[str, str]] = []
    for cases in tables:
        found = _lines_of(lookup, query, cases)
        if not found:
            return ""
        lines += found
    whens = dict.fromkeys(when for _, when in lines)
    said = " ".join(_say_lines([text for text, other in lines if other == when], when) for when in whens)
    if len(tables) == 1:
        said = _shortened([text for text, _ in lines], said)
        if len(said) > _LONGEST and len(whens) > 1 and lines[0][1].startswith(_UNLESS):
            said = f"{lines[0][0]}, {lines[0][1]} (see the cases)."  # what ordinarily holds, and where not
            whens = dict.fromkeys((lines[0][1],))
    return said if len(whens) <= _MOST and len(said) <= _LONGEST else ""


def _say_lines(texts: Sequence[str], when: str) -> str:
    """ "It must be white, when it is summer." Of several statements the condition goes first."""
    if not when:
        return " ".join(f"{text}." for text in texts)
    if len(texts) == 1 and ";" not in texts[0]:
        return f"{texts[0]}, {when}."
    return f"{when[0].upper()}{when[1:]}: {'; '.join(f'{text[0].lower()}{text[1:]}' for text in texts)}."


def _shortened(texts: Sequence[str], said: str) -> str:
    """What all statements begin with is said once: "The flash must be red, when ...; yellow, when ..."."""
    words = [text.split() for text in texts]
    same = 0
    while len({tuple(found[: same + 1]) for found in words}) == 1 and same + 1 < min(map(len, words)):
        same += 1
    while same and words[0][same - 1] not in _VERBS:
        same -= 1
    shared = " ".join(words[0][:same])
    if len(texts) < 2 or not shared or ":" in said:
        return said
    return said.replace(f". {shared} ", "; ")


_VERBS = frozenset({"be", "worn", "carried"})


def _lines_of(lookup: Lookup, query: Query, cases: Sequence[AnswerCase]) -> list[tuple[str, str]]:
    """The statements of one table, each with when it holds; none where it cannot be said."""
    texts = [_say_row(lookup, query, case) for case in cases]
    if any(case.verdict in ("conditional", "conflict") for case in cases):
        return []
    if len(cases) == 1:
        return [(texts[0], "")] if texts[0] else []
    facts: list[Facts] = [case.when for case in cases]
    rows = [(case.when, "permitted" if text else "silent") for case, text in zip(cases, texts, strict=True)]
    said = usually_in(lookup, query)
    usual = {texts[index] for index in ordinary_rows(lookup, rows, said)}  # type: ignore[arg-type]
    told = dict.fromkeys(text for text in texts if text)
    lines = []
    for text in sorted(told, key=lambda one: one not in usual):
        chosen = [index for index, other in enumerate(texts) if other == text]
        others = [index for index in range(len(texts)) if index not in chosen]
        unless = say_exceptions(lookup, facts, others, said) if usual == {text} else ""
        when = say_joined(lookup, facts, chosen)
        if when and any(word in unless and word not in when for word in (" not ", " except ")):
            unless = ""  # "when the wearer wears it", not "unless the wearer does not wear it"
        if not unless and not when:
            return []
        lines.append((text, f"{_UNLESS}{unless}" if unless else when))
    return lines


def _say_row(lookup: Lookup, query: Query, case: AnswerCase) -> str:
    return say_values_of(lookup, query, case.verdict, case.values).removesuffix(".") if case.values else ""
