"""What is done with a telephone, which is more than to carry it: to text, to ring, to look at it.

Whoever asks may have a rule on using one; an answer on carrying it would mislead.
In the form of `sayings.py`.
"""

from __future__ import annotations

TELEPHONES = r"""
# texting
(?:^|(?<=[.,;:–-] ))texting(?: (?:my|a|the) [\w']+)?<there> => using a mobile phone
# text
\b(can|may|could|must) (<subject>) (?:just |quickly )*text(?: (?:home|somebody|someone|(?:my|a|the)
    \s[\w]+))?<there> => \1 \2 use a mobile phone
# phone ring
^(can|may|could|must) (<i>) (?:just |quickly )?(?:phone|ring)(?: (?:home|somebody|someone|(?:my|a|the)
    \s[\w]+))?<there> => \1 \2 use a mobile phone
# phone mobile telephone smartphone cellphone iphone
\b(?:answer|pick up|check|look at|stare at|scroll (?:on|through)|(?:talk|speak|chat|text|ring|call|be|go
    |get)(?: \w+)? (?:on|into)) (?:<the> )?((?:(?:mobile|cell|work|own|private|personal) )?(?:phone|mobile
    |telephone|smartphone|cellphone|iphone))<there> => use my \1
# call calls
\b(?:answer|take|make|have|return) (?:an?|the|my|any) (?:(?:quick|short|private|personal|phone|telephone) )*
    calls?<there> => use a mobile phone
"""
