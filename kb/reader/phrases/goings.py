"""Ways of saying where one goes, for how long, and who is about; written as the lines of `sayings.py`."""

from __future__ import annotations

GOINGS = r"""
# step steps walk walks come comes pop pops nip nips duck ducks wander wanders stroll strolls head heads
\b(when|if|once|while|whenever|before|after|until|as) (<subject>) (?:just |only )?(?:steps?|walks?|comes?
    |pops?|nips?|ducks?|wanders?|strolls?|heads?) (?:from (?:the|my|our|a) [\w-]+(?: [\w-]+)? )?(?=(?:back\s
    )?(?:indoors|outdoors|inside|outside|in|into|out|onto|on to|to)\b) => \1 \2 go\s
# run runs dash hurry rush go goes
\b(when|if|once|while|whenever) (<subject>) (?:(?:just |only )?(?:runs?|dash|hurry|rush)|(?:just|only) goe?s?)
    \s(?=(?:back )?(?:indoors|outdoors|inside|outside|in|into|out|onto|on to|to)\b) => \1 \2 go\s
# look peek pop glance
\b(when|if|once|while|whenever) (<subject>) (?:just |only )?(?:look|peek|pop|glance)s? in (?:at|on) (?=the )
     => \1 \2 go in\s
# walking passing crossing
^(?:just|only|merely) (?=(?:walking|passing|crossing|going|coming|popping|nipping|running) (?:in|into|through
    |across|over|to|past|from|the)\b) =>
# through across along
\b((?:walk|stroll|wander|march|pass|travel|com|go|cross)l?ing(?: (?:straight |back )?home)?)
    \s(?:through|along) (?=\w) => \1 in\s
\b((?:walk|stroll|wander|march|pass|com|go)ing) across (?=\w) => \1 on\s
# whole entire
,? ?\b(?:for |during |over )?the (?:whole|entire) (?:time|trip|day|shift|journey|way|while
    |of it)(?=[.,;?!]| |$) =>
# ordinary normal usual regular routine everyday
,? ?\b(?:on|for|during|in) (?:an? |the |my )?(?:ordinary|normal|usual|regular|routine|everyday)
    \s(?:(?:working )?days?|shifts?|weekdays?|conditions|circumstances|times)(?=[.,;?!]| |$) =>
(?:^|(?<=[,;.])) ?an? (?:ordinary|normal|usual|regular|routine|everyday) (?:(?:working )?day|shift)[,;.] ?
     =>
# standing sitting walking milling waiting crowding sat stood
\bwith ([\w-]+s) (?:standing|sitting|walking|milling|waiting|crowding|sat|stood) (?:all )?(?:around
    |round|about|near|by|beside|next to)(?: (?:me|us|him|her|them))?(?=[.,;?!]| |$) => with \1 about
# meet see watch face approach surround near with
\b(if|when|while) ([\w-]+s) (?:meet|see|can see|are with|are near|come near|surround|watch|face|approach)(?:
    \s(?:me|us|him|her|them))?(?=[.,;?!]| |$) => \1 there are \2 about
# away clear
\b(?:away from|clear of|nowhere near|well away from) ([\w-]+s)(?=[.,;?!]|$| (?:and|in|on|at|when)\b)
     => with no \1 about
"""
