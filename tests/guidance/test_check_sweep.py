"""The sentence of every rule in force, turned against it in many ways and reworded in others.

No change that turns a rule into another may be borne out; no rewording may be called false. Exhaustive over
the rules of two services; what the turns mean is plain English, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from kb.model.records import Rule, is_in_force
from kb.wording import say_rule
from tests.guidance.check_desk import SECOND, TODAY, check, desk_of

pytestmark = pytest.mark.slow
FOLDERS = pytest.mark.parametrize("folder", [None, SECOND], ids=["demo", "second service"])


def sentences(folder: Path | None) -> Iterator[tuple[Rule, str, str]]:
    """Each rule in force with its sentence and its citation."""
    lookup = desk_of(folder).lookup
    for rule in lookup.base.rules:
        clause = lookup.clauses[rule.clause]
        if all(is_in_force(record, TODAY) for record in (rule, clause)):
            edition = lookup.editions[clause.edition]
            book, name = lookup.books[edition.book].label, edition.id.rpartition("/")[2]
            yield rule, say_rule(lookup, rule)[:-1], f"({book}, {name} edition, {clause.number})"


def turned(text: str) -> Iterator[str]:
    """The sentence with its modality turned."""
    if " must not " in text:
        yield text.replace(" must not ", " must ", 1)
        yield text.replace(" must not ", " may ", 1)
    elif " must " in text:
        yield text.replace(" must ", " need not ", 1)
        yield text.replace(" must ", " must not ", 1)
        yield text.replace(" must ", " may ", 1)
    elif "no more than " in text.lower():
        yield re.sub(r"(?i)no more than (.+?) may ", r"At least \1 must ", text, count=1)
        yield re.sub(r"(?i)no more than (.+?) may ", r"More than \1 may ", text, count=1)
    elif " may be worn only " in text:
        yield text.replace(" may be worn only ", " must be worn ", 1)
        yield text.replace(" may be worn only ", " must not be worn ", 1)
    elif re.match(r"(?:From [\w ]+, n|N)o ", text) and " may be " in text:
        yield re.sub(r"(?i)\bno ", "any ", text, count=1)
    elif "nothing may be " in text:
        yield text.replace("nothing may be ", "anything may be ", 1)
    elif " may " in text:
        yield text.replace(" may ", " must not ", 1)
        yield text.replace(" may ", " must ", 1)


def reworded(text: str) -> Iterator[str]:
    """The sentence in other words that mean the same."""
    yield text
    yield text.upper()
    yield re.sub(r",? unless ", " except when ", text)
    yield re.sub(r" \([\d. to]+ mm\)", "", text)
    if " must not be " in text:
        yield text.replace(" must not be ", " is not to be ", 1)
        yield text.replace(" must not be ", " may not be ", 1)
    elif " must be " in text:
        yield text.replace(" must be ", " shall be ", 1)
        yield text.replace(" must be ", " has to be ", 1)
        yield text.replace(" must be ", " is ", 1)
    rig = re.search(r" in ([a-z]+ rig)$", text)
    if rig:
        yield f"In {rig[1]}, {text[0].lower()}{text[1 : rig.start()]}"
        yield f"In {rig[1]} {text[0].lower()}{text[1 : rig.start()]}"


@FOLDERS
def test_no_turned_rule_is_borne_out(folder: Path | None) -> None:
    tried, unread, passed = 0, 0, []
    for _, text, citation in sentences(folder):
        if check(f"{text} {citation}.\n", desk_of(folder)).errors:
            continue  # another rule goes before it in every case, so its opposite may well be true
        for changed in turned(text):
            report = check(f"{changed} {citation}.\n", desk_of(folder))
            tried += 1
            unread += bool(report.unread)
            if not report.errors and not report.unread:
                passed.append(changed)
    assert passed == []
    assert tried > 150
    assert unread * 20 < tried


@FOLDERS
def test_no_reworded_rule_is_called_false(folder: Path | None) -> None:
    tried, unread, false = 0, 0, []
    for _, text, citation in sentences(folder):
        for changed in reworded(text):
            report = check(f"{changed} {citation}.\n", desk_of(folder))
            tried += 1
            unread += bool(report.unread)
            false += [(changed, f.code, f.message) for f in report.errors if f.code != "overruled"]
    assert false == []
    assert tried > 400
    assert unread * 20 < tried
