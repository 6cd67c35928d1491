"""Ways of asking whether a colour or finish is laid down, and which: lines in the form of `rephrase.py`."""

from __future__ import annotations

from kb.reader.words.colours import FINISHES, HEADS

_HUES = "|".join(sorted(HEADS - FINISHES))
_SET = "(?:particular|specific|certain|given|set|special|fixed|prescribed|standard|required|official|correct)"
_ASKED = r"(?:and |so |but )?(?:is|are|do|does|did|can|could|will|would|may|must|should|has|have)"
_GOOD = (
    "(?:permitted|allowed|ok|okay|acceptable|possible|valid|legal|approved|suitable|right|correct|good|fine)"
)
_ANY = "(?:an?|any|one|some)"

# Where it would be read as a question of another kind.
MISLEADING = rf"""
\b(?:an?|any|some) (?:[a-z]+ )?(?:shade|tint|hue|tone) of (?=[a-z]) =>
^(?:and |so |but )?(?:is|are) there (?:{_ANY} )?(?:{_SET} )*(colour|finish)(?: that)? (?:for|of|on) (.+?)
    (?: (?:must|has to|should) be)?\W*$ => what must the \1 of \2 be?
^(?:and |so |but )?(?:is|are) there (?:an?|any) (?:rules?|regulations?|clause|guidance|restrictions?|limits?)
    \s(?:about|on|for|as to|over) (?:the|what|which) (colour|finish)(?: of)? (.+?)
    (?: (?:is|are|can be|may be|should be|must be|has to be))?\W*$ => what must the \1 of \2 be?
"""

LINES = rf"""
\b([a-z]+)[ -]coloured(?= [a-z]) => \1
\b([a-z]+) in colour\b => \1
\bof an? ([a-z]+(?: [a-z]+)?) colour\b => in \1
^(?:and |so |but )?is ([a-z -]+?) an? {_GOOD} (colour|finish) (?:for|of|on) (.+?)\W*$
     => may the \2 of \3 be \1?
^([a-z -]+?)[,:;] is (?:that|this|it) an? {_GOOD} (colour|finish) (?:for|of|on) (.+?)\W*$
     => may the \2 of \3 be \1?
^(?:and |so |but )?(?:is|are) (?:there )?(?:any |some |the |an )?(?:other )?(colour|finish)(?:e?s)?
    \s(?:other )?than .+? {_GOOD} (?:for|of|on) (.+?)\W*$ => what must the \1 of \2 be?
^(?:and |so |but )?is ([a-z -]+?) the only (?:{_GOOD} )?(colour|finish)(?: {_GOOD})? (?:for|of|on) (.+?)\W*$
     => must the \2 of \3 be \1?
\b(?:any|whatever|whichever) (colour|finish) (?:that )?(?:i|you|we|they|he|she|one)
    \s(?:like|want|please|fancy|wish|choose|prefer)s?\b => any \1
^(?:do|does|can|could|may|might|would|will) (.+?) comes? in (?:any )?(?:other|different|several|various
    |many|more) (colour|finish)(?:e?s)?\b(.*)$ => what must the \2 of \1 be\3
^(?:do|does|can|could|may|might|would|will) (.+?) comes? in ((?:[a-z]+ )?(?:{_HUES}))\b(.*)$ => may \1 be \2\3
^{_ASKED} (.+?) be (?:anything|something|any|some)(?: at all)? (?:but|other than|except|besides|apart from)
    \s(?:[a-z]+ )?(?:{_HUES})\b(?: blue)?(.*)$ => what must the colour of \1 be\2
\b(?:come in|be in|be of|have) (?:another|an? different|some other|an? other|an? alternative)
    \s(colour|finish)\b => be any other \1
\b(?:be) (?:another|an? different|some other|an? other|an? alternative) (colour|finish)\b
     => be any other \1
\b(?:come in|be in|be of) any (colour|finish)\b => be any \1
^{_ASKED} (.+?)(?: (?:have|has|need|needs|got))?(?: to)?(?: (?:be|come in|be in|be of|have|have got|in|need))?
    \s{_ANY} {_SET} (colour|finish)\b(.*)$ => what must the \2 of \1 be\3
^{_ASKED} it (?:really |even )?(?:matter|make (?:a|any) difference)(?: to anyone)?,?
    \s(?:what|which) (colour|finish) (.+?) (?:is|are|comes in|come in|has|have)\b(.*)$
     => what must the \1 of \2 be\3
^{_ASKED} the (colour|finish) of (.+?) (?:really |even )?(?:matter|make (?:a|any) difference)\b(.*)$
     => what must the \1 of \2 be\3
^{_ASKED} the (colour|finish) (?:really |even )?(?:matter|make (?:a|any) difference)\b(.*)$
     => what \1 must it be\2
^(?:may|can|could|might|am|are) (?:i|we|you|they|he|she|anyone)(?: allowed to| free to)?
    \s(?:pick|choose|select|decide) (?:any|whatever|which|what|my own|our own|the) (colour|finish)
    \s(?:of|for) (.+?)\W*$ => what must the \1 of \2 be?
^{_ASKED} (.+?) (?:be|come in|be in|have) (?:(?:an?|any|some|another) )?(?:other |different )?
    (colour|finish) (?:other |different )?(?:than|to|from|but|besides|except|apart from|instead of) .+$
     => what must the \2 of \1 be?
"""
