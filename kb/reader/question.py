"""A person's words to a reading: the stages in order, and what is asked or refused on the way."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from kb.model.lookup import Lookup
from kb.model.questions import Abstain, Ask, Query, Reading, Span
from kb.model.records import Case
from kb.reader.doubts.asked_back import alone_unclear, ask_grade, ask_instead, on_its_day, two_readings
from kb.reader.meaning.frame import Frame, find_frame
from kb.reader.meaning.gate import unexplained
from kb.reader.meaning.light import light
from kb.reader.meaning.query import build_query
from kb.reader.meaning.refused import refused
from kb.reader.meaning.roles import find_roles
from kb.reader.meaning.spoken import of_wholes, the_one_spoken_of
from kb.reader.meaning.told import loose, told
from kb.reader.names.lexicon import Lexicon
from kb.reader.names.misspelt import mended_token, names_nearby, plain_words
from kb.reader.names.spelling import Search, index_entries, is_real_word, near_words
from kb.reader.otherwise import otherwise
from kb.reader.phrases.english import LIMBS
from kb.reader.pieces.cover import find_pieces
from kb.reader.pieces.datum import datums, take_datums
from kb.reader.pieces.fold import fold
from kb.reader.pieces.manner import asked_manner, asked_place, where_it_is_so
from kb.reader.pieces.naming import of_the_same, of_whom, resolve_names
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, Understood
from kb.reader.pieces.shades import shades
from kb.reader.pieces.shared import ask_shared, of_the_branch
from kb.reader.pieces.spans import make_spans
from kb.reader.pieces.verbs import verbs
from kb.reader.pieces.whether import marked, unclear
from kb.reader.recast.its_words import of_its_words
from kb.reader.recast.outright import asked_outright
from kb.reader.words.tokens import Token, tokenize, word_key
from kb.text import blanked, visible
from kb.wording import say_query

LONGEST_QUESTION = 1000
MOST_WORDS = 120
_SIDES = frozenset(("left", "right", "both", "other"))


def clean(text: str) -> str:
    """The text with every hidden character as a space, so that places in it stay what they are."""
    return blanked(text)


def too_much(tokens: tuple[Token, ...]) -> Abstain | None:
    if not any(token.low[0].isalnum() for token in tokens):
        return Abstain(reason="There is no question in this.")
    if len(tokens) > MOST_WORDS:
        return Abstain(reason="The question is too long; ask one thing at a time.")
    return None


def understand(text: str, lexicon: Lexicon, lookup: Lookup, search: Search | None) -> Understood | Ask:
    """Words to linked pieces; `Ask` if a misspelt word may be two."""
    tokens, mended = plain_words(tokenize(text), lexicon)
    pieces = _linked(text, tokens, lexicon, lookup)
    fresh = len(mended)
    for _ in range(2):  # a word that is mended may give away the one beside it
        for place in [p.first for p in pieces if p.tag == "unknown"]:
            token = tokens[place]
            if token.low.isdecimal() or is_real_word(token, lexicon):
                continue
            near = names_nearby(tokens, place, lexicon) or near_words(token.low, lexicon)
            if len(near) > 1 and len({word_key(word) for word in near}) > 1:
                changed = tuple((text[: token.start] + word + text[token.end :], word) for word in near)
                return Ask(fact="reading", prompt=f'Which word is "{visible(token.text)}"?', choices=changed)
            if near:
                tokens = (*tokens[:place], mended_token(token, near[0]), *tokens[place + 1 :])
                mended.append((place, token.text))
        if len(mended) == fresh:
            break
        fresh = len(mended)
        pieces = _linked(text, tokens, lexicon, lookup)
    if search is not None:
        pieces = _from_index(pieces, tokens, search, lookup)
    return Understood(text=text, tokens=tokens, pieces=pieces, mended=tuple(mended))


def _linked(text: str, tokens: tuple[Token, ...], lexicon: Lexicon, lookup: Lookup) -> tuple[Piece, ...]:
    return _folded(marked(text, tokens, find_pieces(text, tokens, lexicon)), tokens, lexicon, lookup)


def _folded(
    pieces: tuple[Piece, ...], tokens: tuple[Token, ...], lexicon: Lexicon, lookup: Lookup
) -> tuple[Piece, ...]:
    found = shades(
        resolve_names(where_it_is_so(fold(pieces, tokens, lookup)), tokens, lookup), tokens, lookup
    )
    found = of_the_branch(found, tokens, lookup)
    found = verbs(asked_manner(asked_place(found, lookup), tokens, lookup), tokens)
    return datums(light(found, tokens, lexicon, lookup), tokens, lookup)


def _from_index(
    pieces: tuple[Piece, ...], tokens: tuple[Token, ...], search: Search, lookup: Lookup
) -> tuple[Piece, ...]:
    """Runs of unknown words that the keyword index knows as an item."""
    found: list[Piece] = []
    index = 0
    while index < len(pieces):
        last = index
        while last < len(pieces) and (pieces[last].tag == "unknown" or _joins(pieces, last, tokens)):
            last += 1
        if last == index:
            found.append(pieces[index])
            index += 1
            continue
        words = [tokens[piece.first].low for piece in pieces[index:last] if piece.tag == "unknown"]
        due = [piece.tag for piece in pieces[:index]][-2:] == ["item", "have to"]  # "boots need polishing"
        led = due or "be" in (_before(pieces, index), tokens[max(pieces[index].first, 1) - 1].low)
        led = led or (last < len(pieces) and pieces[last].tag in ("det", "poss"))  # "crossing the slope"
        doing = len(words) == 1 and words[0].endswith(("ing", "ed")) and led
        verb = doing or _is_verb(pieces, index, last)
        limb = _SIDES.issuperset(words[:-1]) and word_key(words[-1]) in LIMBS  # "on my left hand"
        known = not (verb or limb) and any(len(w) > 3 for w in words) and pieces[index].how != "pattern"
        entries = of_whom(index_entries(words, search, lookup), pieces, lookup) if known else ()
        if index > 1 and tokens[pieces[index].first - 1].low in ("that", "which"):
            entries = of_the_same(entries, pieces[index - 2])
        if entries and not (last < len(pieces) and pieces[last].tag in ("item", "items")):
            tag, arg = ("item", entries[0].id) if len(entries) == 1 else ("items", "")
            first, end = pieces[index].first, pieces[last - 1].last
            found.append(Piece(first=first, last=end, tag=tag, arg=arg, entries=entries, how="index"))
        else:
            found += pieces[index:last]
        index = last
    return tuple(found)


def _before(pieces: tuple[Piece, ...], index: int) -> str:
    """The tag of the piece before one, past words that only shade it: "I'm only watching"."""
    return next((p.tag for p in reversed(pieces[:index]) if p.tag not in ("only", "filler", "not")), "")


def _is_verb(pieces: tuple[Piece, ...], first: int, last: int) -> bool:
    """Whether a word stands where only a verb can: "may I polish", "need to polish my shoes"."""
    before = pieces[first - 1].tag if first else ""
    after = pieces[last].tag if last < len(pieces) else ""
    if last - first != 1:
        return False
    asked = first > 1 and pieces[first - 2].tag in ("can", "may", "must", "should", "do")
    return (before in ("self", "person") and asked) or (
        before in ("to", "have to") and after in ("det", "poss", "item", "items")
    )


def _joins(pieces: tuple[Piece, ...], index: int, tokens: tuple[Token, ...]) -> bool:
    """Whether a hyphen joins two unknown words: "hi-vis"."""
    around = pieces[index - 1 : index + 2] if index else ()
    plain = len(around) == 3 and around[0].tag == around[2].tag == "unknown"
    return plain and tokens[pieces[index].first].low == "-"


def read_question(
    text: str,
    *,
    lexicon: Lexicon,
    lookup: Lookup,
    case: Case,
    search: Search | None = None,
    previous: Reading | None = None,
    ways: int = 4,
    tried: dict[str, tuple[int, Reading]] | None = None,
) -> Reading:
    """Read one question. `case` holds the remembered facts and the day; `previous` the reading before it.

    `ways` is how many times its words may still be put in another way; `tried` has what was so put already,
    with the ways that were left then.
    """
    tried = {} if tried is None else tried
    plain = clean(text[: LONGEST_QUESTION + 1])
    if len(text) > LONGEST_QUESTION:
        shown = text[:LONGEST_QUESTION]
        return Reading(
            question=shown, abstain=Abstain(reason="The question is too long; ask one thing at a time.")
        )
    if (refusal := too_much(tokenize(plain))) is not None:
        return Reading(question=text, abstain=refusal)
    if previous is not None:
        from kb.reader.doubts.choice import answer_to_ask  # noqa: PLC0415  as in `_outcome`

        if (answered := answer_to_ask(plain, previous, lexicon)) is not None:
            text = plain = answered
    found = understand(plain, lexicon, lookup, search)
    if isinstance(found, Ask):
        return Reading(question=text, ask=found)
    stop = unclear(found) or refused(found, lookup) or ask_shared(found, lookup) or ask_grade(found, lookup)
    if stop is not None:
        return _stopped(text, make_spans(found, lookup), stop)

    def read(changed: str) -> Reading:
        if not ways:
            return Reading(question=changed, abstain=Abstain(reason="The question is put in too many ways."))
        left, known = tried.get(changed, (0, None))
        if known is not None and (left >= ways or known.query is not None):
            return known
        again = read_question(
            changed, lexicon=lexicon, lookup=lookup, case=case, search=search, previous=previous,
            ways=ways - 1, tried=tried,
        )  # fmt: skip
        tried[changed] = (ways, again)
        return again

    asked = previous.query if previous is not None else None
    before = asked.items if asked is not None else ()
    outright = asked_outright(found, asked, case, lookup, read)
    if isinstance(outright, (Ask, Abstain)):
        return _stopped(text, make_spans(found, lookup), outright)
    if outright is not None:
        return _read_as(text, outright, make_spans(found, lookup), lookup)
    stated = told(found)
    frame = find_frame(found.pieces, found.tokens, stated)
    roles = find_roles(found.pieces, found.tokens, frame, lookup, stated)
    take_datums(found.pieces, found.tokens, roles, lookup)
    if frame.kind == "compare":
        from kb.reader.meaning.compared_plainly import in_plainer_words  # noqa: PLC0415  few questions compare
        from kb.reader.meaning.comparing import Words, comparison  # noqa: PLC0415  as above

        raw, spans = find_pieces(found.text, found.tokens, lexicon), make_spans(found, lookup)
        words = Words(raw, found.tokens, lambda p: _folded(p, found.tokens, lexicon, lookup), lookup)
        if (compared := comparison(text, words, spans, frame, case, previous)) is not None:
            return in_plainer_words(compared, found, read)

    reading = _read(text, found, frame, roles, case, lexicon, lookup, previous, read)
    reading = otherwise(reading, found, roles, before, case, lookup, read)
    then = partial(read_question, text, lexicon=lexicon, lookup=lookup, search=search, ways=ways)
    reading = _on_its_day(reading, found, case, lookup, then)
    return _owned(of_its_words(reading, found, frame, lookup), lookup)


def _on_its_day(
    reading: Reading, found: Understood, case: Case, lookup: Lookup, then: Callable[..., Reading]
) -> Reading:
    if reading.query is None or reading.query.clause is None or reading.query.case != case:
        return reading
    from kb.reader.recast.dated import shown_on_its_day  # noqa: PLC0415  few questions show a clause

    return shown_on_its_day(reading, found, case, lookup, lambda day: then(case=day))


def _owned(reading: Reading, lookup: Lookup) -> Reading:
    named = (span.target for span in reading.spans if span.role == "item" and reading.query is not None)
    if any("insignia" in lookup.broader(item) for item in named if item in lookup.items):
        from kb.reader.recast.owned import of_its_owner  # noqa: PLC0415  most things are nobody's award

        return of_its_owner(reading, lookup)
    return reading


def _read(
    text: str, found: Understood, frame: Frame, roles: Roles, case: Case, lexicon: Lexicon, lookup: Lookup,
    previous: Reading | None, read: Callable[[str], Reading],
) -> Reading:  # fmt: skip
    spans = make_spans(found, lookup)
    echo = _again(found, previous, case, lookup)
    if isinstance(echo, (Ask, Abstain)):
        return _stopped(text, spans, echo)
    if echo is not None:
        kept = tuple(fact for fact, _ in echo.case.facts)
        return Reading(question=text, text=say_query(lookup, echo), query=echo, spans=spans, carried=kept)
    left = tuple(sorted({*unexplained(found.pieces, frame, roles), *loose(found, previous, lookup)}))
    if left:
        from kb.reader.recast.dated import besides_the_day, on_a_day  # noqa: PLC0415  only where words are left
        from kb.reader.recast.ways import asked_way  # noqa: PLC0415

        follows = previous is not None and previous.query is not None
        dated = on_a_day(Reading(question=text, spans=spans), found, left, case, lookup, read, follows)
        if dated is not None:
            return dated
        way = asked_way(found, left, frame, roles, case, lookup)
        if isinstance(way, Ask):
            return Reading(question=text, spans=spans, ask=way)
        if way is not None:
            return _read_as(text, way, spans, lookup)
        from kb.reader.doubts.stopped import stopped  # noqa: PLC0415

        left = besides_the_day(found, left, case.as_of)
        stop = ask_instead(found, left, frame, roles, case, lookup) or stopped(
            found, left, lookup, lambda rest: read_question(rest, lexicon=lexicon, lookup=lookup, case=case)
        )
        return _stopped(text, spans, stop)
    outcome = _outcome(found, frame, roles, case, lookup, previous)
    if isinstance(outcome, Query):
        outcome = of_wholes(outcome, lookup)
    if isinstance(outcome, Query) and outcome.value is not None and lookup.aspects[outcome.aspect].values:
        from kb.reader.meaning.at_once import of_values  # noqa: PLC0415  few questions name a colour

        outcome = of_values(outcome, found, lookup)
    if isinstance(outcome, (Ask, Abstain)):
        stop = on_its_day(outcome, roles, found, lookup)
        return _the_one(_stopped(text, spans, stop), frame, roles, case, lookup, read)
    if frame.ambiguous:
        return Reading(question=text, spans=spans, ask=two_readings(outcome, lookup))
    carried = tuple(fact for fact, _ in outcome.case.facts if not _stated(fact, roles))
    return Reading(
        question=text, text=say_query(lookup, outcome), query=outcome, spans=spans, carried=carried
    )


def _read_as(text: str, query: Query | Reading, spans: tuple[Span, ...], lookup: Lookup) -> Reading:
    if isinstance(query, Reading):
        return query
    return Reading(question=text, text=say_query(lookup, query), query=query, spans=spans)


def _the_one(
    stopped_at: Reading, frame: Frame, roles: Roles, case: Case, lookup: Lookup,
    read: Callable[[str], Reading],
) -> Reading:  # fmt: skip
    """The reading with the one of the offered things of which rules speak, if it asked which is meant."""
    if stopped_at.ask is None or not stopped_at.ask.choices:
        return stopped_at
    from kb.reader.meaning.narrowed import narrowed  # noqa: PLC0415  few are asked which is meant

    ask = stopped_at.ask
    one = the_one_spoken_of(ask, roles.aspect, lookup) or narrowed(ask, frame, roles, case, lookup)
    if one is None:
        return stopped_at
    from kb.reader.doubts.choice import asked_place as asked_span  # noqa: PLC0415  few are asked which is meant

    where, text = asked_span(stopped_at), stopped_at.question
    named = {span.target for span in stopped_at.spans if span.role == "item" and span.target is not None}
    if where is None or (len(named) > 1 and " of " in text[where[0] : where[1]]):
        return stopped_at  # "the sleeves of the undershirt": neither may fall out
    again = read(text[: where[0]] + lookup.items[one].label + text[where[1] :])
    asked = tuple(piece.arg for piece in roles.asked)  # "the cap under the lid"
    return again if again.query is not None and again.query.items in ((one,), asked) else stopped_at


def _stopped(text: str, spans: tuple[Span, ...], stop: Ask | Abstain) -> Reading:
    if isinstance(stop, Ask):
        return Reading(question=text, spans=spans, ask=stop)
    return Reading(question=text, spans=spans, abstain=stop)


def _outcome(
    found: Understood, frame: Frame, roles: Roles, case: Case, lookup: Lookup, previous: Reading | None
) -> Query | Ask | Abstain:
    """The question, in what is known and what it takes from the one before."""
    before = previous.query if previous is not None else None
    if previous is not None and before is not None:
        from kb.reader.meaning import follow  # noqa: PLC0415  only a further question goes on from one
        from kb.reader.meaning.kept import case_in_talk, of_me_again  # noqa: PLC0415  as above

        if (frame.carry or follow.is_fragment(frame, roles)) and not follow.names_kind(found, frame, roles):
            going_on = follow.continued(of_me_again(before, case, found, lookup), frame, roles, lookup)
            if going_on is not None:
                return going_on
        if (kind := follow.kind_asked(found, frame, before, lookup)) is not None:
            return kind
        case = case_in_talk(case, found, frame, roles, previous, lookup)
    if not {"today", "tonight"}.isdisjoint(token.low for token in found.tokens):
        from kb.reader.meaning.today import with_today  # noqa: PLC0415  few questions name the present

        case = with_today(case, roles, lookup)
    outcome = alone_unclear(found, frame, roles, case, lookup) or build_query(frame, roles, case, lookup)
    if isinstance(outcome, Ask) and outcome.fact == "item":
        from kb.reader.recast.ways import asked_way  # noqa: PLC0415  as in `_read`

        way = asked_way(found, (), frame, roles, case, lookup)  # "over my shirt", whichever it is
        return way if isinstance(way, Query) else outcome
    if isinstance(outcome, Query) and outcome.kind == "may" and roles.worn:
        from kb.reader.recast.ways import turned_over  # noqa: PLC0415  as above

        outcome = turned_over(outcome, found, frame, roles, lookup)
    if isinstance(outcome, Query) and roles.worn:
        from kb.reader.recast.ways import beneath  # noqa: PLC0415  as above

        return beneath(outcome, found, roles, lookup)
    return outcome


def _again(
    found: Understood, previous: Reading | None, case: Case, lookup: Lookup
) -> Query | Ask | Abstain | None:
    """What a reply of a few fixed words makes of the question before."""
    if previous is None:
        return None
    from kb.reader.meaning.follow import echoed, other_one, undecided  # noqa: PLC0415  as in `_outcome`

    if (reply := undecided(found.tokens, previous)) is not None or previous.query is None:
        return reply
    from kb.reader.pieces.unnamed import anything_else  # noqa: PLC0415  as above

    more = anything_else(found.tokens, previous.query, lookup)
    return (
        more or other_one(found.tokens, previous.query, lookup) or echoed(found, previous.query, case, lookup)
    )


def _stated(fact: str, roles: Roles) -> bool:
    named = {f"worn:{piece.arg}" for piece in (*roles.worn, *roles.unworn)}
    return fact in roles.facts or fact in named
