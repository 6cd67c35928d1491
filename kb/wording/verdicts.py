"""The headline of an answer: the verdict in words, for the question that was asked."""

from __future__ import annotations

from collections.abc import Sequence

from kb.model.lookup import Lookup
from kb.model.questions import ListEntry, OpenValue, Query, Verdict
from kb.wording.aspects import of_item, say_set
from kb.wording.cases import say_depends, say_facts
from kb.wording.english import listing, phrase, sentence
from kb.wording.labels import rule_reference, the_item
from kb.wording.manners import is_manner
from kb.wording.queries import items_in_words, modal_of

Lines = dict[tuple[str, str, Verdict], str]

# Question (may or must, do or not), verdict: the headline about an item and an act.
_HEADLINES: Lines = {
    ("may", "do", "required"): "Yes: {it} must be {done}.",
    ("may", "do", "permitted"): "Yes. {It} may be {done}.",
    ("may", "do", "prohibited"): "No. {It} must not be {done}.",
    (
        "may",
        "do",
        "not_required",
    ): "The books do not say: {it} need not be {done}, and no clause permits or forbids it.",
    ("may", "not", "required"): "No: {it} must be {done}.",
    ("may", "not", "permitted"): "Yes. {It} may be {done}, but need not be.",
    ("may", "not", "prohibited"): "Yes: {it} must not be {done}.",
    ("may", "not", "not_required"): "Yes. {It} need not be {done}.",
    ("must", "do", "required"): "Yes. {It} must be {done}.",
    ("must", "do", "permitted"): "No. {It} may be {done}, but need not be.",
    ("must", "do", "prohibited"): "No, this is prohibited: {it} must not be {done}.",
    ("must", "do", "not_required"): "No. {It} need not be {done}.",
    ("must", "not", "required"): "No: {it} must be {done}.",
    ("must", "not", "permitted"): "No. {It} may be {done}.",
    ("must", "not", "prohibited"): "Yes. {It} must not be {done}.",
    ("must", "not", "not_required"): "No. {It} need not be {done}, but no clause forbids it.",
}


def say_verdict(
    lookup: Lookup,
    verdict: Verdict,
    query: Query,
    *,
    open_facts: Sequence[str] = (),
    values: Sequence[OpenValue] = (),
    rules: Sequence[str] = (),
) -> str:
    """The headline. `open_facts` are what a conditional verdict depends on, `values` what is left open for an
    aspect, `rules` those that a conflict is between.
    """
    if verdict == "conditional":
        return _say_conditional(lookup, query, open_facts)
    if verdict == "conflict":
        return _say_conflict(lookup, query, rules)
    if verdict == "silent":
        return f"The books are silent: no clause addresses {_matter(lookup, query)}."
    if not query.items:
        return sentence(verdict.replace("_", " "))
    aspect = lookup.aspects[query.aspect]
    if query.kind in ("where", "how", "how_many") or aspect.kind != "act":
        return _say_value_verdict(lookup, verdict, query, values)
    asked = "must" if query.kind == "must" else "may"
    it = _thing(lookup, query)
    done = _done(lookup, query)
    line = _HEADLINES[asked, query.polarity, verdict]
    if query.kind not in ("may", "must"):
        line = (
            _HEADLINES["may", "do", verdict].removeprefix("Yes: ").removeprefix("Yes. ").removeprefix("No. ")
        )
    return sentence(line.format(it=it, It=sentence(it, ""), done=done))


def _done(lookup: Lookup, query: Query) -> str:
    aspect = lookup.aspects[query.aspect]
    text = f"“{aspect.label}”" if is_manner(aspect) else aspect.done or "done"
    if query.case.alone:
        text += " alone" if len(query.items) < 2 else " with nothing else"
    return text


def _thing(lookup: Lookup, query: Query) -> str:
    aspect = lookup.aspects[query.aspect]
    if is_manner(aspect):
        return of_item(lookup, aspect.id, query.items[0])
    return items_in_words(lookup, query)


def _matter(lookup: Lookup, query: Query) -> str:
    """What no clause addresses."""
    if not query.items:
        return "this"
    aspect = lookup.aspects[query.aspect]
    if aspect.kind == "act":
        if query.kind in ("where", "how"):
            return f"how {_thing(lookup, query)} must be {_done(lookup, query)}"
        modal = "must" if query.kind == "must" else "may"
        return f"whether {_thing(lookup, query)} {modal} be {_done(lookup, query)}"
    if aspect.kind == "position":
        return f"where {the_item(lookup, query.items[0])} must be worn"
    return of_item(lookup, aspect.id, query.items[0])


def _say_conditional(lookup: Lookup, query: Query, open_facts: Sequence[str]) -> str:
    if not open_facts:
        return sentence(f"It depends on facts that are not known: {_matter(lookup, query)}")
    named = say_depends(lookup, open_facts[:3])
    more = len(dict.fromkeys(open_facts)) - 3
    if more > 0:
        named = say_depends(lookup, [*open_facts[:2]])
        return f"It depends on {named}, and on {more + 1} more facts."
    return f"It depends on {named}."


def _say_conflict(lookup: Lookup, query: Query, rules: Sequence[str]) -> str:
    matter = _matter(lookup, query)
    clauses = list(dict.fromkeys(rule_reference(lookup, rule) for rule in rules))
    on = matter if matter.startswith(("whether", "where", "how")) else f"on {matter}"
    on = on if on.startswith("on ") else f"on {on}"
    if len(clauses) == 1:
        return f"Conflict: {clauses[0]} disagrees with itself {on}."
    if clauses:
        return f"Conflict: {listing(clauses)} disagree {on}."
    return f"Conflict: the clauses disagree {on}."


def _say_value_verdict(lookup: Lookup, verdict: Verdict, query: Query, values: Sequence[OpenValue]) -> str:
    if query.value is not None:
        return _say_claim(lookup, verdict, query)
    stated = [_state(lookup, query, aspect, values) for aspect in dict.fromkeys(v.aspect for v in values)]
    if not stated:
        if lookup.aspects[query.aspect].kind == "act":
            return sentence(
                f"the books say how {the_item(lookup, query.items[0])} must be {_done(lookup, query)}"
            )
        return sentence(f"the books settle {_matter(lookup, query)}")
    return " ".join(stated)


def _state(lookup: Lookup, query: Query, aspect: str, values: Sequence[OpenValue]) -> str:
    """The values left open of one aspect as a sentence."""
    record = lookup.aspects[aspect]
    chosen = [value for value in values if value.aspect == aspect]
    labels = list(dict.fromkeys(value.label for value in chosen))
    item = chosen[0].item if chosen[0].item in lookup.items else query.items[0]
    if record.kind == "act":
        texts = [label.replace("_", " ") for label in labels]
        return sentence(f"{of_item(lookup, aspect, item)}: {listing(texts)}")
    modal = "must" if all(value.required for value in chosen) or len(labels) > 1 else "may"
    said = labels[0] if len(labels) == 1 else f"either {listing(labels, 'or')}"
    if record.kind == "position":
        return sentence(phrase(the_item(lookup, item), modal, "be worn", said))
    if record.kind == "order":
        return sentence(f"{of_item(lookup, aspect, item)}, the senior first, {modal} be {said}")
    return sentence(f"{of_item(lookup, aspect, item)} {modal} be {said}")


def _say_claim(lookup: Lookup, verdict: Verdict, query: Query) -> str:
    """The verdict on a claimed value: "No. The height of the device must not be 2 in."."""
    assert query.value is not None
    record, item = lookup.aspects[query.aspect], query.items[0]
    subject, be = of_item(lookup, record.id, item), "be"
    if record.kind == "position":
        subject, be = the_item(lookup, item), "be worn"
    said = say_set(lookup, record.id, query.value)
    modal = {"required": "must", "permitted": "may", "prohibited": "must not", "not_required": "need not"}[
        verdict
    ]
    good = verdict in ("required", "permitted") if query.kind != "must" else verdict == "required"
    if query.polarity == "not":
        good = not good
    lead = "" if query.kind not in ("may", "must") else ("Yes. " if good else "No. ")
    return lead + sentence(phrase(subject, modal, be, said))


def say_list_headline(lookup: Lookup, query: Query, entries: Sequence[ListEntry]) -> str:
    """The headline of a list or of "who": how many lines follow, or that there are none."""
    aspect = lookup.aspects[query.aspect]
    if query.kind == "who" and query.items:
        return _say_who_headline(lookup, query, entries)
    done = aspect.done or aspect.label
    modal = modal_of(query.modalities, "")
    subject = f"that {modal} be {done}" if modal else "that the books speak of"
    known = say_facts(lookup, query.case.facts)
    when = f" when {known}" if known else ""
    if not entries:
        return sentence(f"no clause names anything {subject}{when}")
    number = "one thing" if len(entries) == 1 else f"{len(entries)} things"
    return sentence(f"{number} {subject}{when}")


def _say_who_headline(lookup: Lookup, query: Query, entries: Sequence[ListEntry]) -> str:
    aspect = lookup.aspects[query.aspect]
    act = phrase(aspect.verb or "have", items_in_words(lookup, query))
    groups = {
        word: [entry.label for entry in entries if entry.verdict == verdict]
        for verdict, word in (("required", "must"), ("permitted", "may"), ("prohibited", "must not"))
    }
    said = [f"{listing(labels)} {word} {act}" for word, labels in groups.items() if labels]
    if said:
        return " ".join(sentence(text) for text in said)
    if any(entry.verdict == "conditional" for entry in entries):
        return sentence(f"who may {act} depends on the situation")
    if any(entry.verdict == "conflict" for entry in entries):
        return sentence(f"the clauses disagree on who may {act}")
    return sentence(f"no clause says who may {act}")
