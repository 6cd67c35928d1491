"""The keyword index: which things and clauses speak of some words. It gives ids, never answers.

Words are analysed here and stored as bare tokens, so the index holds no code of ours, and users' words
never meet a query parser. Only this module knows the index library.
"""

from __future__ import annotations

import re
import threading
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType
from typing import Any, Literal

import msgspec

from kb.errors import StoreUnavailableError
from kb.model.records import Named, RuleBase
from kb.text import Pattern

DocumentKind = Literal["item", "value", "fact", "group", "aspect", "clause"]
Field = Literal["label", "other", "everyday", "heading", "text"]

# How much a hit in a field counts; also the order in which `Hit.field` names one.
FIELD_WEIGHTS: Mapping[Field, float] = MappingProxyType(
    {"label": 4.0, "other": 3.5, "everyday": 2.0, "heading": 1.5, "text": 1.0}
)
K1 = 1.2
B = 0.75

_WORD = Pattern(r"[^\W_]+(?:['’][^\W_]+)*")
_STOP_WORDS = """
a an and any are as at be been but by can do does for from had has have he her his how i if in into is it its
may me must my no nor not notwithstanding of on or our shall she should so such than that the their them then
there these they this those to under upon was we were what when where which who whom whose why will with would
you your
"""
# Words that look like a plural or a verb form and are not, or whose form means something of its own.
_WHOLE_WORDS = """
always anything bearing brass building canvas ceiling christmas clothing during earring embed evening
everything fitting gas glasses goggles indeed lens lining mooring morning naked need news nothing
other outing overalls pants perhaps piping pyjamas red rigging seed series shed shorts shred something species
speed stocking thus tights trousers webbing wedding weed
"""
_FORMS = """
wear worn wore | sew sewn | show shown | tear torn tore | hold held | keep kept | hang hung | bind bound
arise arose arisen | awake awoke | become became | begin began begun | bend bent | bite bitten
blow blew blown | breed bred | bring brought | build built | burn burnt | buy bought | catch caught
cling clung | come came | deal dealt | dig dug | draw drew drawn | drink drank drunk
drive drove driven | eat ate eaten | fall fallen | feed fed | fight fought | find found | flee fled
fly flew flown | forbid forbade forbidden | forget forgot forgotten | freeze froze frozen | get got gotten
grow grew grown | hear heard | hide hid hidden | kneel knelt | lead led | learn learnt
lend lent | lose lost | mean meant | meet met | mistake mistook mistaken | pay paid | ride rode ridden
rise risen | run ran | say said | see seen | seek sought | sell sold | send sent
shake shook shaken | shoot shot | shrink shrank shrunk | sing sang sung | sink sank sunk | sit sat
sleep slept | slide slid | speak spoke spoken | spend spent | spill spilt | spin spun | spoil spoilt
stand stood | steal stole stolen | stick stuck | sting stung | strike struck | swear swore sworn
sweep swept | swim swam swum | swing swung | teach taught | think thought | throw threw thrown
understand understood | undo undid undone | wake woke woken | weave wove woven | weep wept | win won
withdraw withdrew withdrawn | write wrote written
give given gave | take taken took | tell told | make made | shine shone | foot feet | man men | woman women
tooth teeth | colour color colors | grey gray | moustache moustaches | trousers trouser | go goes gone went
do did done | use used using | dye dyed dyeing | parade paraded parading | examine examined examining
include included including | outline outlined | combine combined combining | scarf scarves | half halves
hoof hooves | loaf loaves | shelf shelves | wharf wharves | handkerchief handkerchieves
knife knives | life lives | wife wives
"""
_STOP = frozenset(_STOP_WORDS.split())
_WHOLE = frozenset(_WHOLE_WORDS.split())
_IRREGULAR: Mapping[str, str] = MappingProxyType(
    {
        form: forms.split()[0]
        for forms in re.split(r"[|\n]", _FORMS)
        if forms.strip()
        for form in forms.split()[1:]
    }
)
_MUTE_E = Pattern(r".*(?:[cvuz]|dg|ng|rg|ir|ur|rs|ns|is|as|us|scrib|ud|[bcdfgkptz]l|tr)")
_NO_MUTE_E = Pattern(r".*[aiou]ng")
_VOWEL = Pattern(r"[aeiouy]")
_SHORT_STEM = Pattern(r"[^aeiou]*[aeiouy][^aeiouwxy]")


class Document(msgspec.Struct, frozen=True, kw_only=True):
    """What the index knows of one thing; texts are as written."""

    id: str
    kind: DocumentKind
    label: str = ""
    other: tuple[str, ...] = ()
    everyday: tuple[str, ...] = ()
    heading: str = ""
    text: str = ""

    @property
    def key(self) -> str:
        return f"{self.kind}:{self.id}"

    def digest(self) -> str:
        """SHA-256 of the content."""
        from hashlib import sha256  # noqa: PLC0415  see `kb.digests`

        return sha256(msgspec.json.encode(self)).hexdigest()


class Hit(msgspec.Struct, frozen=True, kw_only=True):
    """A document found; `score` is its BM25F score, `field` the weightiest field with one of the words."""

    id: str
    kind: DocumentKind
    score: float
    field: Field


# -- words -----------------------------------------------------------------------------------------------


def _without_plural(word: str) -> str:
    if not word.endswith("s") or len(word) < 4 or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies"):
        return word[:-1] if len(word) == 4 else f"{word[:-3]}y"
    if word.endswith(("sses", "xes", "ches", "shes", "zzes")):
        return word[:-2]
    return word[:-1]


def _completed(stem: str) -> str:
    """The verb whose form, less -ed or -ing, is the stem: tar(r)- tar, lin- line, pierc- pierce, button-."""
    if len(stem) > 3 and stem[-1] == stem[-2] and stem[-1] not in "aeiosz":
        one_vowel = len(_VOWEL.findall(stem)) == 1
        return stem if stem[-1] == "l" and one_vowel else stem[:-1]
    if _SHORT_STEM.fullmatch(stem) or (_MUTE_E.fullmatch(stem) and not _NO_MUTE_E.fullmatch(stem)):
        return f"{stem}e"
    return stem


def _without_ending(word: str) -> str:
    for ending in ("ing", "ed"):
        stem = word.removesuffix(ending)
        if stem == word:
            continue
        if ending == "ed" and stem.endswith("i"):
            return f"{stem[:-1]}y" if len(stem) > 2 else f"{stem}e"
        return _completed(stem) if len(stem) > 2 and _VOWEL.search(stem) else word
    return word


@lru_cache(maxsize=8192)  # the words of clauses are looked at again and again
def lemma(word: str) -> str:
    """The common form of a lower-case word: scarves scarf, worn wear, buttoned button, authorized authorise.

    Only inflection is taken away, never a suffix that makes another word: officer is not office.
    """
    word = re.sub(r"['’]s?$", "", word)
    if word in _IRREGULAR or word in _WHOLE:
        return _IRREGULAR.get(word, word)
    found = _without_plural(word)
    if found not in _WHOLE and (found == word or found.endswith("ing")):
        found = _without_ending(found)
    if len(found) > 5 and found.endswith("ize"):
        return f"{found[:-3]}ise"
    return _IRREGULAR.get(found, found)


def analyse(text: str) -> tuple[str, ...]:
    """The tokens of a text in order: lower case, split at hyphens, without stop words and inflection."""
    words = (match.casefold() for match in _WORD.findall(text))
    kept = (word for word in words if word not in _STOP and (len(word) > 1 or word.isdigit()))
    return tuple(lemma(word) for word in kept)


# -- documents -------------------------------------------------------------------------------------------


def _of_record(kind: DocumentKind, identifier: str, record: Named, text: str | None = None) -> Document:
    everyday: tuple[str, ...] = getattr(record, "everyday", ())
    return Document(
        id=identifier,
        kind=kind,
        label=record.label,
        other=record.other_labels,
        everyday=everyday,
        text=text or "",
    )


def documents_of(base: RuleBase) -> tuple[Document, ...]:
    """Everything of a base that people name, and every clause. A value's id is "fact/value"."""
    found = [_of_record("item", item.id, item, item.note) for item in base.items]
    for fact in base.facts:
        if fact.family == "worn":
            continue
        found.append(_of_record("fact", fact.id, fact))
        found += [_of_record("value", f"{fact.id}/{value.id}", value, value.note) for value in fact.values]
    found += [_of_record("group", group.id, group) for group in base.groups]
    for aspect in base.aspects:
        found.append(_of_record("aspect", aspect.id, aspect))
        found += [_of_record("value", f"{aspect.id}/{value.id}", value) for value in aspect.values]
    found += [
        Document(id=clause.id, kind="clause", heading=clause.heading or "", text=clause.text)
        for clause in base.clauses
    ]
    return tuple({document.key: document for document in found}.values())


# -- the index -------------------------------------------------------------------------------------------


def _schema() -> Any:
    from whoosh.analysis import SpaceSeparatedTokenizer  # noqa: PLC0415
    from whoosh.fields import ID, TEXT, Schema  # noqa: PLC0415

    fields = {
        name: TEXT(analyzer=SpaceSeparatedTokenizer(), phrase=False, stored=False) for name in FIELD_WEIGHTS
    }
    return Schema(key=ID(unique=True, stored=True), kind=ID(stored=False), **fields)


def _row(document: Document) -> dict[str, str]:
    texts: Mapping[Field, Iterable[str]] = {
        "label": (document.label,),
        "other": document.other,
        "everyday": document.everyday,
        "heading": (document.heading,),
        "text": (document.text,),
    }
    row = {"key": document.key, "kind": document.kind}
    for name, parts in texts.items():
        tokens = [token for part in parts for token in analyse(part)]
        if tokens:
            row[name] = " ".join(tokens)
    return row


def _write(index: Any, removed: Iterable[str], added: Iterable[Document]) -> None:
    writer = index.writer()
    try:
        for key in removed:
            writer.delete_by_term("key", key)
        for document in added:
            writer.add_document(**_row(document))
    except BaseException:
        writer.cancel()
        raise
    writer.commit()


def build_index(folder: Path, documents: Iterable[Document]) -> None:
    """Write a new index into a folder, which is made if there is none.

    Raises `StoreUnavailableError` if it cannot be written.
    """
    from whoosh.index import create_in  # noqa: PLC0415

    try:
        folder.mkdir(parents=True, exist_ok=True)
        _write(create_in(str(folder), _schema()), (), documents)
    except OSError as error:
        raise _unwritable(folder, error) from error


def update_index(folder: Path, changed: Iterable[Document], removed: Iterable[str]) -> None:
    """Replace the changed documents of an index and take out those whose keys ("kind:id") are given.

    The folder must be trusted: opening an index can run what is in it. Raises `StoreUnavailableError`.
    """
    from whoosh.index import open_dir  # noqa: PLC0415

    fresh = tuple(changed)
    try:
        _write(open_dir(str(folder)), [*removed, *(document.key for document in fresh)], fresh)
    except OSError as error:
        raise _unwritable(folder, error) from error
    except Exception as error:
        raise _damaged(folder) from error


def _unwritable(folder: Path, error: OSError) -> StoreUnavailableError:
    return StoreUnavailableError(
        f"The keyword index in {folder} cannot be written: {error.strerror or error}."
    )


def _damaged(folder: Path) -> StoreUnavailableError:
    return StoreUnavailableError(f"The keyword index in {folder} cannot be read. Build it again.")


class _Searchers(threading.local):
    """One open searcher for each thread: a shared one gives wrong answers without an error."""

    opened: tuple[Path, int] | None = None
    searcher: Any = None

    def get(self, folder: Path) -> Any:
        from whoosh.index import open_dir  # noqa: PLC0415
        from whoosh.scoring import BM25F  # noqa: PLC0415

        if self.opened and self.opened[0] == folder and not folder.exists():
            return self.searcher  # removed meanwhile; what is open stays readable
        wanted = (folder, folder.stat().st_mtime_ns)
        if self.opened != wanted:
            self.close()
            self.searcher = open_dir(str(folder)).searcher(weighting=BM25F(B=B, K1=K1))
            self.opened = wanted
        return self.searcher

    def close(self) -> None:
        if self.searcher is not None:
            self.searcher.close()
        self.opened = self.searcher = None


_SEARCHERS = _Searchers()


def _query(tokens: Sequence[str]) -> Any:
    from whoosh.query import Or, Term  # noqa: PLC0415

    return Or([Term(name, token, boost=weight) for token in tokens for name, weight in FIELD_WEIGHTS.items()])


def search(
    folder: Path, words: Sequence[str], kinds: Sequence[DocumentKind] = (), limit: int = 10
) -> tuple[Hit, ...]:
    """The documents that have any of the words, the best first; of some kinds only if any are given.

    The folder must be trusted (see `update_index`). Raises `StoreUnavailableError` if it is no whole index.
    """
    tokens = tuple(dict.fromkeys(analyse(" ".join(words))))
    if not tokens or limit < 1:
        return ()
    from whoosh.query import Or, Term  # noqa: PLC0415

    only = Or([Term("kind", kind) for kind in kinds]) if kinds else None
    try:
        results = _SEARCHERS.get(folder).search(_query(tokens), limit=limit, filter=only, terms=True)
        found = [(hit["key"], hit.score, {name for name, _ in hit.matched_terms()}) for hit in results]
    except Exception as error:
        _SEARCHERS.close()
        raise _damaged(folder) from error
    return tuple(_hit(key, score, fields) for key, score, fields in found)


def _hit(key: str, score: float, fields: set[str]) -> Hit:
    kind, _, identifier = key.partition(":")
    field = next(name for name in FIELD_WEIGHTS if name in fields)
    return msgspec.convert({"id": identifier, "kind": kind, "score": score, "field": field}, Hit)
