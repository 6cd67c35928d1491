"""After how a thing is washed: "can I do that at home?", "can my mate?", "how often do they need it?"."""

from __future__ import annotations

from kb.model.lookup import Lookup
from kb.model.questions import Query, Reading
from kb.reader.talks.further import LEAD, put_as
from kb.reader.talks.talked import Talk
from kb.text import Pattern

_DO_SO = Pattern(
    rf"(?i){LEAD}(?P<may>can|may|could|must|should|do) (?P<who>i|we|you|they|he|she|(?P<other>any ?one|"
    r"some ?one|(?:my|an?) [\w' -]{3,25}?)|(?:the|our) [\w' -]{3,25}?)(?P<to> have to| need to)? "
    r"do (?:it|that|this|them|so|(?:the|my) (?P<thing>[\w' -]{3,30}?))(?: myself| ourselves| too)*"
    r"(?P<how>(?: (?:at|in|on|by|with|every|once|after|before|when|if|for)\b.*)?)"
)
_NEEDS_IT = Pattern(
    rf"(?i){LEAD}(?P<other>how often|when) (?:do|does|must|should) (?:the |my )?(?P<thing>[\w' -]{{3,30}}?) "
    r"(?:need|want|get|have) (?:it|that)(?: done)?(?: then)?"
)
_CLEANS = Pattern(r"(?i)\b(wash|clean|launder|iron|press|polish|scrub|wipe|brush|dry)(?:s|es|ed|ing)?\b")


def does_so(text: str, bare: str, previous: Reading, talk: Talk) -> Reading | None:
    """Such a turn with the verb of the question before; None after any other, and for any other turn.

    What would be read of wearing the thing there is told by how it is cared for; so is what a mate does, who
    is nobody that the books know.
    """
    found = _DO_SO.fullmatch(bare) or _NEEDS_IT.fullmatch(bare)
    before, verb = previous.query, _CLEANS.search(previous.question)
    if found is None or before is None or not (verb or _is_care(before, talk.lookup)):
        return None
    things = before.items or (previous.frame.items if previous.frame is not None else ())
    thing = found["thing"] or (talk.lookup.items[things[0]].label if things else "it")
    does = f"{verb[1].casefold() if verb is not None else 'clean'} the {thing}"
    how = talk.read(f"how do I {does}?", previous)
    if found["other"]:
        return put_as(text, how)
    again = talk.read(f"{found['may']} {found['who']}{found['to'] or ''} {does}{found['how']}?", previous)
    apart = again.query is not None and again.query.items and not _is_care(again.query, talk.lookup)
    return put_as(text, how if apart and how.query is not None else again)


def _is_care(query: Query, lookup: Lookup) -> bool:
    way = lookup.aspects.get(query.aspect)
    return way is not None and "care" in (way.id, way.within)
