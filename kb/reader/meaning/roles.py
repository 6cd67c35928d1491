"""The part that every piece plays: what is asked about, what is worn with it, what is known."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from kb.model.lookup import Lookup
from kb.model.values import YES, Choices, Ranges, intersect, is_empty
from kb.reader.meaning.frame import Frame
from kb.reader.meaning.walker import Walker
from kb.reader.phrases.english import tag_set
from kb.reader.pieces.naming import credential_of
from kb.reader.pieces.parts import Roles
from kb.reader.pieces.pieces import Piece, is_other
from kb.reader.words.tokens import Token

_MODAL = frozenset({"may", "can", "must", "should", "have to", "allowed", "banned"})
_PLACING = frozenset({"on", "above", "below", "place"})
_LIGHT = frozenset({"det", "poss", "filler", "comma"})
_ITEMS = ("item", "items")
_BEFORE_NEED = frozenset(
    {"do", "does", "don't", "doesn't", "n't", "not", "really", "also", "still", "always", "never"}
)
EXPLAINED = tag_set("""
    comma, filler, det, poss, joined, service, self, person, can, may, must, should, have to, allowed, banned
    required, optional, be, do, have, act, leave off, what, which, who, where, how, how many, when, why, rule
    which clause, and how about, with, whatever, alone, together, and, or, on, in, of, for, if, to
""")
"""Tags that carry structure; every other piece must be given a part or the question is not understood."""


_GONE = frozenset({"lost", "mislaid", "missing", "misplaced", "forgotten"})


def find_roles(
    pieces: Sequence[Piece], tokens: tuple[Token, ...], frame: Frame, lookup: Lookup,
    told: frozenset[int] = frozenset(),
) -> Roles:  # fmt: skip
    """Walk the pieces once, left to right; what is worn in the places `told` is no more than worn."""
    roles = Roles()
    walk = _Walk(pieces, tokens, frame, lookup, roles, told)
    for index in range(len(pieces)):
        walk.step(index)
    walk.end()
    return roles


class _Walk(Walker):
    """The state of the walk: to which list the next item goes."""

    def __init__(
        self, pieces: Sequence[Piece], tokens: tuple[Token, ...], frame: Frame, lookup: Lookup, roles: Roles,
        told: frozenset[int],
    ) -> None:  # fmt: skip
        super().__init__(pieces, tokens, frame, lookup, roles, told)
        self.state = "asked"
        self.condition = False
        self.opening = False
        self.worded = False  # an act was named in the condition
        self.acted = False
        self.denied = False  # the next "with" says what is not worn

    def step(self, index: int) -> None:
        tag = self.pieces[index].tag
        if (index in self.told) != (index - 1 in self.told):
            self._main_clause()
            self.state, self.condition = ("worn", True) if index in self.told else ("asked", False)
        elif self.state == "unworn" and self._asks_anew(index):
            self._main_clause()
        handler = _HANDLERS.get(tag)
        if handler is not None:
            handler(self, index)
        elif tag in _MODAL:
            self._main_clause()
            if tag == "have to":
                self._needing(index)
        elif tag in ("be", "do"):
            if self.opening and self._begins_question(index):
                self._main_clause()
        elif tag == "with":
            self.opening = self.opening or self._near(-1, 1) == index  # "with the coat on, is the hat ..."
            self.state, self.denied = ("unworn", False) if self.denied else ("worn", False)
        elif tag == "where" and self._worn_where(index):
            self._main_clause()
        elif tag == "whatever":
            self.state = "open"
        elif tag == "alone" and not self._is_to_hand(index):
            self.roles.alone = True
            if "or" in (self._tag(self._near(index, -1)), self._tag(self._near(index, 1))):
                self.roles.clashing.append(self.pieces[index])
        elif tag == "leave off":
            self.state, self.acted = ("unworn", self.acted) if index in self.told else ("asked", True)

    def without(self, index: int) -> None:
        after = self._near(index, 1)
        needed = self._tag(index) == "no" and self._tag(self._near(after, 1)) == "required"
        self.state = "asked" if needed else "unworn"  # "so no tabard needed"
        if self._tag(after) in _ITEMS:
            self._use(index)

    def but(self, index: int) -> None:
        """ "With the liner but not the hood", "but without the hat"."""
        after = self._near(index, 1)
        words = [token.low for token in self.tokens[self.pieces[index].first : self.pieces[index].last]]
        begun = self._near(-1, 1) == index and words == ["but"]
        if self._tag(after) in ("without", "no") or begun:
            self._use(index)
        elif self.tokens[self.pieces[index].last - 1].low == "not":
            shared = self._tag(after) == "with" and bool(self.roles.asked)  # "but not with the hood"
            if self._tag(self._near(after, 1) if shared else after) in _ITEMS:
                self.state, self.denied = "unworn", shared
                self._use(index)

    def _main_clause(self) -> None:
        self.state, self.condition, self.opening = "asked", False, False

    def _begins_question(self, index: int) -> bool:
        """Whether "is" or "do" begins the question after a condition: "if it is worn, is the cap ..."."""
        before, after = self._tag(index - 1), self._tag(index + 1)
        subject = after in ("det", "poss", *_ITEMS)
        return before in ("comma", "act", "particle") or (subject and (self.worded or before == "fact"))

    def _needing(self, index: int) -> None:
        """ "Does the coat need the hood": what needs is worn, what is needed is asked about."""
        needs = self.tokens[self.pieces[index].first].low.startswith(("need", "requir"))
        asked = self.roles.asked
        plain = needs and self.pieces[index].last - self.pieces[index].first == 1
        thing = plain and asked and self._tag(self._near(index, 1)) in _ITEMS
        if thing and (self._tag(0) == "do" or self._needs_itself(self.pieces[index].first - 1)):
            self.roles.asked, self.roles.worn = [], [*self.roles.worn, *asked]

    def _needs_itself(self, place: int) -> bool:
        """Whether what needs something, up to a word, is a thing: "specs don't need", "do they need"."""
        while place > 0 and self.tokens[place].low in _BEFORE_NEED:
            place -= 1
        ended = any(piece.last == place + 1 and piece.tag in _ITEMS for piece in self.pieces)
        return ended or self.tokens[place].low in ("they", "it")

    def condition_word(self, index: int) -> None:
        """ "if", or "when" further in: what follows says what is worn, unless it follows "is it ok".

        Before the question ("when the coat is worn, must ...") a "when" is no question word.
        """
        first = self._near(-1, 1) == index
        if self._tag(index) == "when":
            asks = first and self._tag(index + 1) in (*_MODAL, "be", "do")
            self.condition = self.condition or not asks
            self.opening = first and not asks and self.frame.kind != "when"
        else:
            begun = self.acted or bool(self.roles.asked) or index == 0
            self.condition = begun or self._tag(index - 1) != "allowed"
            self.opening = first

    def act(self, index: int) -> None:
        piece = self.pieces[index]
        wearing = piece.arg in ("wear", "use")
        if wearing and not self.roles.asked and self._supposes():
            self.roles.supposed = True
        later = self.acted and self.tokens[piece.first].low.endswith("ing")
        if wearing and (self.condition or later):
            self.worded = True
            self.state = "unworn" if self._tag(index - 1) == "not" else "worn"
            if self.state == "unworn":
                self._use(index - 1)
            return
        if index in self.told:
            return
        known = self.roles.aspect
        if piece.arg != "use" and known not in ("", piece.arg) and (known != "wear" or self.roles.asked):
            self.roles.other_acts.append(piece)
            return
        if piece.arg != "use":
            self.roles.aspect = piece.arg
        self.acted = True
        if self.state != "worn" or not self.roles.asked:
            self.state = "asked"

    def _supposes(self) -> bool:
        """ "And if I wear ...": whether the text begins with a supposition."""
        opening = self._near(-1, 1)
        if opening >= len(self.pieces) or self.pieces[opening].tag not in ("if", "when", "and how about"):
            return False
        return self.tokens[self.pieces[opening].last - 1].low in ("if", "when", "i", "you")

    def item(self, index: int) -> None:
        piece, before = self.pieces[index], self._leading(index)
        tag = self._tag(before)
        if tag == "for" and self.tokens[self.pieces[before].first].low in ("as", "like"):
            return  # "may I use the scarf as a belt"
        self._use(index)
        if (tag == "of" and self._is_whole(piece)) or self._is_credential(index, before):
            return
        if tag == "particle" and self.roles.asked and self.tokens[self.pieces[before].first].low == "off":
            self.roles.worn.append(piece)  # "take the badge off my cap"
            return
        if tag == "of" and len(self.roles.asked) == 1 and self._has_any(self.roles.asked[0], piece):
            self.roles.worn.append(piece)  # "the sleeves of the coat"
            return
        which = tag in ("which", "what") and self._tag(self._near(before, -1)) in _AT
        lacked = self._tag(before - 1) == "not" and self._tag(before - 2) in ("have", "do")
        if tag == "have" and lacked and before > 2:  # "if I have not got the cap"
            self._use(before - 1)
            self.roles.unworn.append(piece)
            return
        asked = self.state == "asked" and not self.opening
        gone = self._is_gone(index, before) or self._is_dated(index, asked)
        if self.state == "open" or gone or (which and self.frame.kind == "where"):
            return
        if tag == "where" and self.tokens[self.pieces[before].last - 1].low == "on":
            self.roles.placing.append(piece)  # "whereabouts on the coat"
            return
        inside = tag == "in" and self.roles.asked and "feature" in self._broader(piece)
        if (tag in _PLACING or inside) and (
            self.roles.asked or (self.frame.kind == "where" and self._more_items(index))
        ):
            self.roles.placing += [self.pieces[before], piece]
            self._use(before)
            return
        self.roles.led_by_on = tag == "on" and not self.roles.asked
        self.roles.led_by_in = tag == "in" and not self.roles.asked
        beside = self.opening or (self.roles.asked and (self.condition or tag == "for"))
        if beside and self.state == "asked":
            self._beside(index)
            return
        if tag in ("what", "which") and self.state == "worn" and self._tag(before - 1) == "comma":
            self.state = "asked"  # "with mountain dress, what headgear may be worn"
        if tag == "in" and index not in self.told:
            worn = self.roles.asked or self.frame.kind == "list" or self._leads_in(before)
            self.state = "worn" if worn else "asked"
        if self._stands_beside(index) or (tag == "of" and self.roles.asked and self.state == "asked"):
            self.roles.crowded = (self.pieces[index - 1 if tag != "of" else self._near(before, -1)], piece)
        if self.state == "asked" and self.roles.asked and tag == "or":
            self.roles.alternatives = True
        self._put(index, self.state)

    def _is_gone(self, index: int, before: int) -> bool:
        """ "I've lost my badge, must I wear the paper one?": not worn, nor is it asked if it may be."""
        gone = self._tag(before) == "fact" and self.tokens[self.pieces[before].last - 1].low in _GONE
        if not gone or not (self._more_items(index) or self.frame.kind == "list"):
            return False
        if self.frame.kind != "may":
            self.roles.unworn.append(self.pieces[index])
        return True

    def _leads_in(self, before: int) -> bool:
        """ "In fell boots on the snow, may I leave the cap off?": what one is in, before the question."""
        asks = [i for i in range(before, len(self.pieces)) if self._tag(i) in (*_MODAL, "do", "be")]
        led = self._near(before, -1) < 0 and bool(asks) and self._tag(asks[0] - 1) == "comma"
        self.opening = led and self._more_items(asks[0])
        return self.opening or self._says_in(before)

    def _beside(self, index: int) -> None:
        """ "for the coat", "if the coat is (not) worn": an item worn, or not, with the one asked about."""
        after = self._near(index, 1)
        while self._tag(after) in ("be", "not"):
            if self._tag(after) == "not":
                self._put(index, "unworn")
                self._use(after)
                return
            after = self._near(after, 1)
        self._put(index, "worn")

    def _is_credential(self, index: int, before: int) -> bool:
        """ "if I hold the diver's badge" says what is held, not what is worn; told before, it may be "it"."""
        whose = self._near(before, -1) if self._tag(before) == "with" else -1  # "a C1 with the badge"
        graded = self._tag(whose) == "fact" and self.pieces[whose].fact in ("grade", "branch")
        said = graded or self._tag(before) == "hold"
        fact = credential_of(self.pieces[index], self.lookup) if said else None
        self.roles.facts |= {fact: YES} if fact else {}
        if fact is None or graded:
            return False  # with it: held and worn
        self._use(before)
        return index not in self.told or bool(self.roles.asked) or self._more_items(index)

    def _broader(self, piece: Piece) -> set[str]:
        return {broad for entry in piece.entries for broad in self.lookup.broader(entry.id)}

    def _more_items(self, index: int) -> bool:
        return any(piece.tag in _ITEMS for piece in self.pieces[index + 1 :])

    def _is_whole(self, piece: Piece) -> bool:
        """Whether an item after "of" only says whose part was meant."""
        wholes = {entry.id for entry in piece.entries}
        for asked in (*self.roles.asked, *self.roles.worn):
            owners = {self.lookup.items[entry.id].part_of for entry in asked.entries}
            if owners & wholes or any(set(self.lookup.broader(o)) & wholes for o in owners if o):
                return True
            if any(owners.intersection(self.lookup.broader(whole)) for whole in wholes):
                return True  # "the buckle of the webbing belt", of a part that all belts have
        return False

    def _has_any(self, part: Piece, whole: Piece) -> bool:
        """Whether a part that is of no one garment is that of the garment named after it."""
        loose = part.tag == "item" and self.lookup.items[part.arg].part_of is None
        return loose and "feature" in self._broader(part) and whole.tag == "item"

    def particle(self, index: int) -> None:
        """ "Roll up": a particle goes with the verb before it, or with the verb it was parted from."""
        if self.pieces[index].how == "pattern" or self._tag(self._near(index, -1)) in ("act", "leave off"):
            self._use(index)

    def telling(self, index: int) -> None:
        """Words of books and clauses explain nothing outside a question about them."""
        if self.frame.kind in ("source", "list", "compare"):
            self._use(index)

    def only(self, index: int) -> None:
        after, before = self._tag(self._near(index, 1)), self._tag(self._near(index, -1))
        rest = self.pieces[index + 1 :]
        bounds = after == "act" and any(p.tag in ("fact", "number") for p in rest)
        if before == "fact" or bounds:
            return  # "K7s only", "only worn in winter", "only wear one"
        if after in _ITEMS or after == "act" or (after == "" and before in (*_ITEMS, "act")):
            with_others = any(piece.tag == "with" for piece in self.pieces[index:])
            if not with_others:
                self.roles.alone = True
                self._use(index)

    def fact(self, index: int) -> None:
        piece = self.pieces[index]
        self._use(index)
        if piece.values is None:
            return
        known = self.roles.facts.get(piece.fact)
        both = piece.values if known is None else intersect(known, piece.values)
        if is_empty(both):
            self.roles.clashing.append(piece)
        else:
            self.roles.facts[piece.fact] = both

    def aspect(self, index: int) -> None:
        named, known = self.pieces[index].arg, self.roles.value_aspect
        within = self.lookup.aspects[named].within
        before = self._tag(index - 1) in ("det", "poss") and self._tag(index + 1) in _ITEMS
        if index in self.frame.used or (within is not None and before):
            return
        if within == "care" and self._tag(index + 1) == "in":
            return  # "may I iron in my smock"
        if (not known and self.roles.aspect in ("", "wear")) or (known and within == known):
            self.roles.of_aspect = bool(known)
            self.roles.value_aspect = named
            self._use(index)

    def aspect_value(self, index: int) -> None:
        if index in self.told and not self._is_of_the_one(index):
            return  # "it is bright out" asks about no colour
        entries = self.pieces[index].entries
        owners = {entry.owner for entry in entries}
        fits = not self.roles.value_aspect or self.roles.value_aspect in owners
        if len(owners) == 1 and fits and not isinstance(self.roles.value, Ranges):
            self.roles.value_aspect = owners.pop()
            chosen = frozenset(entry.id for entry in entries)
            known = self.roles.value
            if isinstance(known, Choices) and chosen <= known.members and is_other(self.pieces[index]):
                return  # "red gloves in red"
            self.roles.apart = self.roles.apart or self._is_of_another(index, chosen)
            self.roles.value = Choices(chosen | known.members if isinstance(known, Choices) else chosen)
            self.roles.leading = index if self._tag(index + 1) in _ITEMS else None
            self._use(index)


_AT = ("on", "in", "above", "below")
_HANDLERS: dict[str, Callable[[_Walk, int], None]] = {
    "without": _Walk.without,
    "no": _Walk.without,
    "between": _Walk.between,
    "but": _Walk.but,
    "if": _Walk.condition_word,
    "when": _Walk.condition_word,
    "act": _Walk.act,
    "item": _Walk.item,
    "items": _Walk.item,
    "only": _Walk.only,
    "fact": _Walk.fact,
    "aspect": _Walk.aspect,
    "aspect value": _Walk.aspect_value,
    "measure": _Walk.measure,
    "dimension": _Walk.dimension,
    "number": _Walk.number,
    "oversize": _Walk.oversize,
    "by": _Walk.by,
    "on date": _Walk.on_date,
    "body": _Walk.body,
    "place": _Walk.place,
    "clause number": _Walk.clause_number,
    "book": _Walk.book,
    "care": _Walk.care,
    "grant": _Walk.grant,
    "mean": _Walk.mean,
    "hold": _Walk.hold,
    "date": _Walk.date_word,
    "particle": _Walk.particle,
    "say": _Walk.telling,
    "show": _Walk.telling,
    "list": _Walk.telling,
    "clause": _Walk.telling,
    "about": _Walk.telling,
}
