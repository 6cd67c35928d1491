"""Somebody else says otherwise: "are you sure? the chief says only on watch", "I was told 20".

What was answered is answered again; where what they say tells another case ("not in summer"), in that.
Whether they are right is for the one who asks to see: it is never taken for what is so.
"""

from __future__ import annotations

from kb.model.questions import Query, Reading
from kb.reader.names.lexicon import PERSONAL
from kb.reader.phrases.english import PHRASES
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.pieces.reported import AGREEMENT
from kb.reader.question import understand
from kb.reader.stories.hearsay import doubts
from kb.reader.talks.further import put_as
from kb.reader.talks.talked import Talk
from kb.reader.words.forms import word_set
from kb.reader.words.tokens import tokenize
from kb.text import Pattern

_WORD = r"(?!(?:is|are|was|were|may|can|must|should|do|does|did|if|when|what|which|how|who|why)\b)[\w'’-]+"
_SAYS = Pattern(
    r"(?i)(?:(?:but|and|well|so|oh|hm+|no|yes|ok|okay|funny|strange|odd)[ ,]+)*"
    r"(?:(?:i|we)(?: was| were| have been|['’]ve been|['’]d been| had been)? (?:always )?(?:told|taught)"
    r"|(?:i|we)(?: had|['’]d)?(?: always| really)? (?:thought|assumed|believed|had it as)"
    rf"|(?:i|we)(?: have|['’]ve)? heard|(?:{_WORD} ){{1,4}}?(?:(?:always|just|still|once) )?"
    r"(?:says?|said|claims?|claimed|reckons?|reckoned|thinks?|insists?|insisted|swears?|maintains?|"
    r"(?:told|tells) (?:me|us)))"
    r"(?: that)?[,:]?(?: (?:it|that|they)(?:['’]s|['’]re| is| are| was))? (?P<what>.+)"
)
_HIS = Pattern(
    r"(?i)(?:(?:but|and|well|so|oh|hm+|no|yes|ok|okay)[ ,]+)*(?:the|our|my|an?) (?P<who>[\w' -]{2,30}?) "
    r"(?:says?|said|claims?|claimed|reckons?|reckoned|thinks?|insists?|insisted|swears?|maintains?)"
    r"(?: that)? (?:he|she|they) (?P<verb>can|may|could|must|has to|have to|needs? to|should) "
    r"(?:keep|wear|have|carry|leave|put) (?:his|hers|theirs)(?: own)?(?: one)?(?: on)?"
)
_PARTS = Pattern(r"(?<=[.!?;]) +|, (?=but )| [-–—] ")
_NOT = Pattern(r"(?i)(?:not|never|no)\b(?: (?:if|when|while)\b)?,? *(?=\w)")
_ONLY = Pattern(r"(?i)\b(?:only|just|always|ever|everywhere|anywhere|all the time|at all times)\b")
_CASE = frozenset({"fact"})
_SIZE = frozenset({"measure", "number", "aspect value", "count", "place"})
_BESIDE = frozenset(
    ("det", "poss", "filler", "comma", "in", "on", "for", "with", "at", "of", "if", "when", "to", "only",
     "not", "at most", "at least", "below", "above", "particle", "degree")
)  # fmt: skip
_OF_A_SIZE = ("how", "how_many", "where")
_MOST_WORDS = 8
_AGAIN = word_set("otherwise different differently opposite contrary nonsense rubbish")


def gainsaid(text: str, previous: Reading, talk: Talk) -> Reading | None:
    """The question before once more, or in the case that somebody is said to tell of; None for any other."""
    before = previous.frame or previous.query
    if before is None or previous.ask is not None or not before.items:
        return None
    claims = [part for part in _PARTS.split(text.strip()) if not _doubts(part)]
    his = _HIS.fullmatch(claims[0].strip(" .!?")) if len(claims) == 1 else None
    if his is not None:
        return _of_himself(text, his["who"], his["verb"], talk.made(previous.question, before), talk)
    found = _SAYS.fullmatch(claims[0].strip(" .!?")) if len(claims) == 1 else None
    if found is None:
        return None
    what = found["what"].strip(" .!?'\"")
    lows = [token.low for token in tokenize(what)]
    if not lows or len(lows) > _MOST_WORDS:
        return None
    if {*lows} <= AGREEMENT | _AGAIN:
        return talk.made(text, before)
    denied = _NOT.match(what)
    rest = what[denied.end() :] if denied is not None else what
    read = understand(rest, talk.lexicon, talk.lookup, None)
    pieces = read.pieces if isinstance(read, Understood) else ()
    if not pieces or not _is_of(pieces, before):
        return None
    tags = {piece.tag for piece in pieces}
    if tags & _CASE and not tags & _SIZE:
        if _ONLY.search(what) is not None:
            return talk.made(text, before)  # what holds elsewhere is what was asked
        asked = talk.made(previous.question, before)
        again = talk.read(f"and {rest}?", asked)
        same = again.query is not None and (again.query.items, again.query.kind) == (
            before.items,
            before.kind,
        )
        return put_as(text, again) if same else None
    sized = bool(tags & _SIZE) and not tags & _CASE and before.kind in _OF_A_SIZE
    return talk.made(text, before) if sized and denied is None else None


def _of_himself(text: str, who: str, verb: str, before: Reading, talk: Talk) -> Reading | None:
    """ "Our inspector says he has to keep his on": whether an inspector must wear what was asked about."""
    may = verb.casefold() in ("can", "may", "could")
    again = talk.read(f"and {'may' if may else 'must'} the {who} wear it?", before)
    query, asked = again.query, before.query
    if query is None or asked is None or (query.items, query.aspect) != (asked.items, asked.aspect):
        return None
    known = dict(asked.case.facts)
    new = {fact for fact, values in query.case.facts if known.get(fact) != values}
    told = any(span.role in ("grade", "fact") for span in again.spans)
    same = all(talk.lookup.facts[fact].family in PERSONAL for fact in new)
    return put_as(text, again) if told and same else None


def _doubts(part: str) -> bool:
    """ "Are you sure?", "really?", "hm.": words that doubt what was answered, and say no more."""
    said = part.strip(" .!?,;")
    lows = [token.low for token in tokenize(said)]
    return doubts(lows) or _SURE.fullmatch(said) is not None


_SURE = Pattern(
    r"(?i)(?:(?:and|but|so|ok|okay|oh|hm+|wait|what|well|huh|eh)[ ,]*)*"
    r"(?:are you (?:(?:quite|really|absolutely|very) )?(?:sure|certain|positive)"
    r"(?: (?:about|of) (?:that|it|this))?|"
    r"really|seriously|honestly|truly|you sure|i doubt (?:it|that)|is (?:that|it) (?:right|true|so|correct)|"
    r"(?:that['’]s )?(?:odd|funny|strange|weird))?"
)


def _is_of(pieces: tuple[Piece, ...], before: Query) -> bool:
    """Whether what is said is no more than a case or a size, of nothing but what was asked about."""
    for piece in pieces:
        if piece.tag == "item":
            if piece.arg not in before.items:
                return False
        elif piece.tag not in _CASE | _SIZE | _BESIDE and PHRASES.get((piece.tag,)) != "filler":
            return False
    return True
