"""The headline of an answer that lists things, people or clauses."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from types import MappingProxyType

from kb.model.lookup import Lookup
from kb.model.questions import ListEntry, Query, Verdict
from kb.wording.cases import case_points
from kb.wording.english import definite, is_plural, listing, phrase, sentence
from kb.wording.labels import book_name, the_item
from kb.wording.queries import items_in_words, modal_of, person
from kb.wording.verdicts import say_before_all

_LONGEST = 240  # characters of a headline that says when
_SHORT = 110  # characters of what such a headline says of some, where all that it may say is too long
_FEW = 4  # things that a headline names
_MOST_NAMED = 20  # the same of those that must be worn
_LISTED: tuple[tuple[Verdict, str], ...] = (
    ("required", "must be {done}"),
    ("permitted", "may be {done}"),
    ("prohibited", "must not be {done}"),
    ("not_required", "need not be {done}"),
    ("conflict", "fall under clauses that disagree"),
    ("conditional", "depend on further facts"),
)


def say_list_headline(
    lookup: Lookup,
    query: Query,
    entries: Sequence[ListEntry],
    choices: Mapping[str, str] = MappingProxyType({}),
    own: Collection[str] = (),
) -> str:
    """The headline of a list or of "who": how many things have which verdict, or that there are none.

    `choices` are the duties that a thing shares with others, any of which will do; `own` are the things of
    which a duty speaks of just what was told.
    """
    nothing = all(entry.verdict == "silent" for entry in entries)
    if nothing and (early := say_before_all(lookup, query)):
        return early
    if query.kind == "who" and query.items:
        return _say_who_headline(lookup, query, entries)
    aspect = lookup.aspects[query.aspect]
    done = aspect.done or aspect.label
    who = person(lookup, query)
    points = case_points(lookup, query.case.facts, leads=who == "anyone")
    case = [f"for {who}", *points] if who != "anyone" else points
    if len(case) > 1 and case[1].startswith("in "):
        case = [f"{case[0]} {case[1]}", *case[2:]]
    lead = f"{', '.join(case)}, " if case else ""
    if not entries:
        modal = modal_of(query.modalities, "may or must")
        return sentence(f"{lead}no clause names anything that {modal} be {done}")
    if len(entries) <= _FEW:
        return sentence(lead + _say_few(entries, done))
    if (told := _say_required(entries, done, choices, own)) and query.kind == "list":
        return sentence(lead + told)
    counts = _counts(entries, done)
    first, rest = counts[0], counts[1:]
    texts = [f"{_things(*first)}", *(f"{number} {_singular(number, text)}" for number, text in rest)]
    return sentence(lead + listing(texts))


def _counts(entries: Sequence[ListEntry], done: str) -> list[tuple[int, str]]:
    """How many things have each verdict, and its words; none of those that no thing has."""
    numbers = [(sum(entry.verdict == verdict for entry in entries), text) for verdict, text in _LISTED]
    return [(number, text.format(done=done)) for number, text in numbers if number]


def _say_required(
    entries: Sequence[ListEntry], done: str, choices: Mapping[str, str], own: Collection[str]
) -> str:
    """What to put on, by name: "the badge must be worn, and ordinarily the tie; 6 may be worn".

    Empty where nothing is required, or too much to be named.
    """
    always = [entry for entry in entries if entry.verdict == "required"]
    mostly = [entry for entry in entries if entry.usual == "required"]
    apart = _groups([one for one in entries if one.item in own and one not in mostly])
    full = len(always) + len(mostly) > _FEW
    groups = {when: group for when, group in apart.items() if 1 + full <= len(group) <= _MOST_NAMED}
    if len(always) + len(mostly) > _MOST_NAMED or not (always or mostly or groups):
        return ""
    text = listing(_named(always, done))
    if mostly:
        names = listing(_either(mostly, choices))
        text = f"{text}, and ordinarily {names}" if always else f"ordinarily {names} must be {done}"
    for when, group in groups.items():
        names = listing([definite(entry.label) for entry in group])
        text = f"{text}; when {when}, also {names}" if text else f"when {when}, {names} must be {done}"
    grouped = [entry for group in groups.values() for entry in group]
    left = [entry for entry in entries if all(entry not in named for named in (always, mostly, grouped))]
    counts = _counts(left, done)
    rest = [
        f"{number}{'' if place else ' more'} {_singular(number, said)}"
        for place, (number, said) in enumerate(counts)
    ]
    return f"{text}; {listing(rest)}" if rest else text


def _groups(entries: Sequence[ListEntry]) -> dict[str, list[ListEntry]]:
    """Things that must be worn in some case, the most by one condition first: of welders, of painters."""
    groups: dict[str, list[ListEntry]] = {}
    for entry in entries:
        verdict, _, when = entry.condition.partition(" when ")
        if entry.verdict == "conditional" and verdict == "required" and when and ";" not in when:
            groups.setdefault(when, []).append(entry)
    most = sorted(groups, key=lambda when: -len(groups[when]))
    return {when: groups[when] for when in most[:_MOST_GROUPS] if len(when) <= _SHORT}


_MOST_GROUPS = 3


def _either(entries: Sequence[ListEntry], choices: Mapping[str, str]) -> list[str]:
    """The names of things; those of which one duty asks for one or another are joined by "or"."""
    groups: dict[str, list[str]] = {}
    for entry in entries:
        groups.setdefault(choices.get(entry.item, entry.item), []).append(definite(entry.label))
    return [listing(group, "or") for group in groups.values()]


def _named(entries: Sequence[ListEntry], done: str) -> list[str]:
    """The things by name, those with one verdict together: "the cap must be worn"."""
    said = []
    for verdict, text in _LISTED:
        labels = [definite(entry.label) for entry in entries if entry.verdict == verdict]
        if labels:
            alone = len(labels) == 1 and not is_plural(labels[0])
            said.append(phrase(listing(labels), _singular(1 if alone else 2, text.format(done=done))))
    return said


def _say_few(entries: Sequence[ListEntry], done: str) -> str:
    """The things by name, each with when it is so if that is short; the rest depend on further facts."""
    told = {entry.item: text for entry in entries if (text := _say_when(entry, done))}
    for one, other in _pairs(entries):
        told[one.item] = f"{definite(one.label)} or {definite(other.label)} must be {done}, one of the two"
        del told[other.item]
        entries = [entry for entry in entries if entry is not other]
    if len("; ".join(told.values())) > 2 * _LONGEST:
        told = {item: text for item, text in told.items() if len(text) <= _SHORT}
    first = [entry for entry in entries if entry.verdict != "conditional"]
    rest = [entry for entry in entries if entry not in first and entry.item not in told]
    if not told:
        return listing(_named(entries, done))
    parts = [listing(_named(first, done)), *told.values(), listing(_named(rest, done))]
    return "; ".join(part for part in parts if part)


def _pairs(entries: Sequence[ListEntry]) -> list[tuple[ListEntry, ListEntry]]:
    """The things of which each must be worn unless the other is, and nothing else matters."""
    unless = {
        entry.item: entry.condition.removeprefix("required, unless the wearer wears ")
        for entry in entries
        if entry.condition.startswith("required, unless the wearer wears ")
    }
    return [
        (one, other)
        for place, one in enumerate(entries)
        for other in entries[place + 1 :]
        if unless.get(one.item) == definite(other.label) and unless.get(other.item) == definite(one.label)
    ]


def _say_when(entry: ListEntry, done: str) -> str:
    """ "The tie must be worn, unless it is hot", "ordinarily the tie must be worn", of a thing in one way."""
    modals = {verdict.replace("_", " "): text.format(done=done) for verdict, text in _LISTED}
    name, mostly = definite(entry.label), entry.condition.removeprefix("ordinarily ")
    if mostly != entry.condition and entry.usual is not None:
        return f"ordinarily {name} {modals[entry.usual.replace('_', ' ')]}"
    for link in (", unless ", " when "):
        said, found, when = entry.condition.partition(link)
        if found and said in modals and ";" not in when:
            return f"{name} {modals[said]}{link}{when}"
    return ""


def _things(number: int, text: str) -> str:
    return f"{number} {'thing' if number == 1 else 'things'} {_singular(number, text)}"


def _singular(number: int, text: str) -> str:
    return text.replace("depend ", "depends ").replace("fall ", "falls ") if number == 1 else text


def _say_who_headline(lookup: Lookup, query: Query, entries: Sequence[ListEntry]) -> str:
    aspect = lookup.aspects[query.aspect]
    act = phrase(aspect.verb or "have", items_in_words(lookup, query))
    said = []
    words = {"required": "must", "permitted": "may", "prohibited": "must not", "not_required": "need not"}
    order = ["required", "permitted", "conditional", "conflict", "prohibited"]
    if "not_required" in query.modalities:
        order = ["not_required", *order]
    if query.modalities == ("prohibited",):
        order = ["prohibited", "conditional", "conflict"]
    told, rest = _who_when(entries)
    last = ""
    for verdict in order:
        labels = [entry.label for entry in entries if entry.verdict == verdict]
        if verdict == "conditional" and told:
            said.append(told)
            labels = rest
        if labels and verdict in words:
            said.append(sentence(f"{listing(labels)} {words[verdict]} {act}"))
        elif labels:
            what = "it depends on the situation" if verdict == "conditional" else "the clauses disagree"
            whom = listing(labels)
            if verdict == "conditional" and told and len(whom) > _SHORT:
                last = "For the others it depends on the situation."
            else:
                said.append(sentence(f"for {whom}, {what}"))
    said += [last] if last else []
    return " ".join(said) or sentence(f"no clause says who may {act}")


def _who_when(entries: Sequence[ListEntry]) -> tuple[str, list[str]]:
    """For whom it depends on the situation, with when, and for whom to say that would take too many words."""
    groups: dict[str, list[str]] = {}
    for entry in entries:
        if entry.verdict == "conditional":
            groups.setdefault(entry.condition, []).append(entry.label)
    texts = {when: sentence(f"for {listing(who)}, {when}") for when, who in groups.items() if when}
    if len(" ".join(texts.values())) > _LONGEST or len(texts) < len(groups):
        longest = {when: _LONGEST if when.startswith(("required", "permitted")) else _SHORT for when in texts}
        texts = {when: text for when, text in texts.items() if len(text) <= longest[when]}
    rest = [label for when, who in groups.items() if when not in texts for label in who]
    return " ".join(texts.values()), rest


def say_sources(lookup: Lookup, query: Query, clauses: Sequence[tuple[str, str]]) -> str:
    """The headline of a question about clauses: their titles and numbers, or that there are none."""
    if not clauses:
        if query.polarity == "not" and query.items:
            thing = the_item(lookup, query.items[0])
            matter = "who pays for" if query.aspect == "possession" else "how often to replace"
            return f"The books are silent: no clause says {matter} {thing}."
        where = f"of {book_name(lookup, query.book)} " if query.book else ""
        return f"No clause {where}in force speaks of it."
    numbers: dict[str, list[str]] = {}
    for title, number in clauses:
        numbers.setdefault(title, []).append(number)
    return "; ".join(
        f"{title}, clause{'s' * (len(found) > 1)} {listing(_first_of(found))}"
        for title, found in numbers.items()
    )


_MOST_NUMBERS = 20


def _first_of(numbers: list[str]) -> list[str]:
    """The first numbers, and how many more there are: nobody looks up a hundred clauses."""
    more = len(numbers) - _MOST_NUMBERS
    return [*numbers[:_MOST_NUMBERS], f"{more} more"] if more > 1 else numbers
