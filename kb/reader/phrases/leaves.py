"""Ways of asking for leave, for how long it is, and what a local order may do; lines as in `sayings.py`."""

from __future__ import annotations

_AGREES = (
    r"(?:say (?:yes|so|ok|okay)|agree(?: to (?:it|that|this))?|give (?:me |us )?(?:the nod|the ok|the okay"
    r"|their ok|their blessing|the go-ahead|leave|permission)|ok it|okay it|nod it through|be asked)"
)
_NEEDED = r"(?:has to|have to|needs to|must|would have to|will have to)"
_LEAVE = r"(?:leave|waiver|excusal|excuse|exemption|dispensation|pass|permission)"
_LASTS = r"(?:last|run|hold|stand|be (?:good|valid)|good|valid|in force)(?: for)?"
_SOFT = r"(?:softer|laxer|looser|easier|gentler|kinder|milder|slacker|less strict|less stiff|more relaxed"
_SOFT += r"|more generous|more easy-going|weaker)"
_FOR_ME = (
    r"(?:before|so that|so|for|if) (?:<i>|me|us)"
    r" (?:(?:can|may|could|to|am allowed to|'m allowed to|want to) )*"
)
_DECIDES = r"(?:decides|gets to decide|can decide) (?:whether|if|when) (?:<i>) (?:can|may|could|get to)"
_HOW_LONG = r"(?:for )?how long(?:'s| is| does| will| can| do)"
_OCCASION = "funeral|wedding|memorial service|church parade|parade|ceremony"
LEAVES = rf"""
# dress rig outfit livery uniform
^(?!.*\b(?:{_OCCASION})\b.*\b(?:{_OCCASION})\b).*\b({_OCCASION})\b[^.?!]*[.!,;:]+ (?:so )?(?:which|what)
    \s(order of dress|dress|rig|outfit|livery|uniform) (?:is (?:it|that|right|called for)|(?:do|should) <i>
    \s(?:turn out in|put on|wear|go in|be in))\W*$ => which \2 is worn at a \1?
# yes agree nod ok okay blessing go-ahead so asked leave permission
^who {_NEEDED} {_AGREES} {_FOR_ME}(?:wear|put on|have on|have|use) (.+?)(?: on)?\W*$
     => whose permission do I need for \1?
^who {_NEEDED} {_AGREES} {_FOR_ME}put (.+?) on\W*$ => whose permission do I need for \1?
^(<the> [\w' -]+?)[:,;.!-]+ (?:so )?who {_NEEDED} {_AGREES} {_FOR_ME}(?:wear|put|have|use) (?:it|them|those
    |that)(?: on)?\W*$ => whose permission do I need for \1?
# decides decide
^who {_DECIDES} (take|leave) (<the> [\w' -]+?) off\b(.*?)\W*$ => who can let us \1 \2 off\3?
^who {_DECIDES} (go without|leave off|take off) (<the> .+?)\W*$ => who can let us \1 \2?
# long how
^{_HOW_LONG} (?:(?:<the> )?([\w' -]+?)(?:'s|s') )(?:\w+ )?{_LEAVE} (?:from|off) (?:wearing )?(.+?)
    \s{_LASTS}\W*$ => how long can the \1 excuse me from \2 for?
^{_HOW_LONG} (?:<the> )?{_LEAVE} (?:from|off) (?:wearing )?(.+?) {_LASTS}\W*$
     => how long can anyone excuse me from \1 for?
^{_HOW_LONG} (<the> [\w' -]*?{_LEAVE}) (?:good|valid|in force)(?: for)?\W*$ => how long does \1 last?
# softer laxer looser easier gentler kinder milder slacker strict stiff relaxed generous easy-going weaker
^((?:can|could|may|might|is|are) .*\b(?:orders?|rules?|instructions?)\b.*)\b{_SOFT}\b => \1more lenient
"""
