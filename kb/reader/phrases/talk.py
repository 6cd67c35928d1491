"""Everyday talk as data: phrases that carry nothing, and everyday ways of saying wear, leave off, allowed,
banned.

The form is that of `english`: one line per tag, phrases between "|". A phrase that `english` has keeps its
tag
there. No adjective and no noun of what is worn, done or measured stands here: such words change a question.
"""

from __future__ import annotations

TALK = """
filler: the other day|the other night|the other week|the other evening|the other morning|at that time
|at the time|in that case|under those conditions|in those conditions
|in the shade|carry on|carrying on|any reason|any reason why|is there any reason
|is there any reason why
|is there a reason
|is there a reason why|ok so|okay so|right so|ok then|good morning|good afternoon|good evening|morning all
|evening all|btw
|tbh|fyi|lol|bit of a|a question about|a question on|a query about|question on|query about|sorry but|here
|always|all the time|all of the time|the whole time|at all times|at any time|any time|every time|as a rule
|as usual|i hear|i gather|apparently|supposedly|allegedly|these days|nowadays|this time|for now
|for the moment|for sure|honestly|seriously|basically|literally|obviously|of course|in fact|as it happens
|if you like|if possible|if i want|if i like|if i want to|if i like to|if i wish|if i wish to|if i fancy it
|if we like|if we want|if they want|if he wants|if she wants|if need be|by any chance|something i
|something we|something you|something they|a thing i|one of the things i|anywhere|anyplace|in my case
|in our case|in this case|for my part|on my part|ta|hi all|any idea|any idea if|any idea whether|any ideas
|any clue|does anyone know|does anyone know if|does anybody know|does anybody know if|anyone know
|anyone know if|does anyone know whether|remind me|remind me if|help me|sorry|um|er|erm|hmm|just checking
|just wondering|just asking|quick one|one more thing|one thing|settle this|settle an argument|settle a bet
|for the record|out of interest|out of curiosity|to be clear|to be sure|just to be sure|just to be clear
|just to check|to check|i need to know|i need to know if|i must know|need to know|need to know if
|wanted to know|wanted to check|wanted to ask|i just want to know|want to be sure|i want to be sure
|i 'd like to check|can you confirm|can you confirm that|please confirm|confirm|confirm that|is it right that
|am i right that|am i right in thinking|am i right in thinking that|am i right to think
|am i right to think that|i take it|i take it that|i assume|i suppose|i presume|presumably|i understand that
|i gather that|as i understand it|as far as i know|i was thinking of|i 'm thinking of|i am thinking of
|i fancy|i feel like|i plan to|planning to|i intend to|about to|i 'm about to|i am about to|on the dot
|bang on|spot on|dead on|going to be|'d like to|'d love to|would love to|'d|'ll|go ahead and
|bother|bother with|bother to|bothering with|bothered to|the likes of|a bit of|a bit|a little bit
|some sort of|some kind of|for me|for us|on us|upon me|for myself|for him|for them|for you|mine|yours|ours
|theirs|mine to|ours to|asks if|asks whether|is asking if|is asking whether|wants to know if
|wants to know whether|wonders if|wonders whether|asked if|asked whether|asked me if|asked me whether
|asks me if|asks me whether|or what|reckon|i reckon|d'you reckon|do you reckon|you reckon|is there any way
|is there a way|any way i can|any way i could|any chance|any chance i can|any chance i could|any chance of
|just been|wherever i go|wherever we go
why: why on earth|why oh why|why ever|why the hell
how: how on earth
what: what on earth
if: since i|since we|seeing as|seeing as i|seeing that|because i|because we|now that i|now that we
person: lads|lasses|guys|folks|folk
in: in broad|in full|in bright|off to|on my way to|on the way to|on our way to|turn up to|turned up to
|turns up to|turning up to|show up to|show up at|turn up at|turn up for|turning up for|due at|expected at
without: lost|forgot|forgotten|mislaid|misplaced
run: live|lives|belong|belongs
have: just been handed|just been issued|just been given|just been issued with|been handed|been issued
|been issued with|was issued|was issued with|was handed|was given|bought
|got given|gets|getting|gotten
use: hang on to|hold on to|hold onto|hang onto|keep hold of
should: 'd better|had better
wear: carry on wearing|keep wearing|go on wearing|continue wearing|continue to wear|keep on wearing
|get changed into|gets changed into|changed into|change into|changing into|step out in|stepping out in
|be seen in|seen in|be seen wearing|seen wearing|be caught in|be caught wearing|slip into|stay in|remain in
|stay dressed in|dress up in|rig out in|rigged out in|togged up in|kitted up in|kitted out in
|get kitted out in|get dressed in|get kitted up in|have got on|got on|stay on|stays on|staying on|stayed on
|remain on|remains on|be left on|be kept on|go out in|go out wearing|go outside in|come in wearing|leave on
|leaves on|leaving on
leave off: be excused|be excused from|be let off|be spared|get excused from|exempt from|exempted from
|exempt from wearing|get out of wearing|get out of|excused from wearing
|excused from|let off wearing|get rid of
|gets rid of|do away with|whip off|be taken off|be left off|leave at home|left at home|leave behind
|left behind|leave aside|put away|get by without|manage without|live without|be seen without
|be caught without|seen without|do n't bother with|not bother
where: what is the right place for|what 's the right place for|what is the proper place for
|what 's the proper place for|what is the correct place for|what 's the correct place for|place for
have to: duty bound to|my duty to|our duty to|a duty to|in duty bound to|one's duty to
allowed: open to me|open to us|open to anyone|open to everyone|open to you|open to one|open to all|lawful
|lawful to|legit|legit to|legitimate|kosher|kosher to|clear to|all clear to
|am i good to|am i good in|am i good with|are we good to|are we good in|was that fair|is that fair
|is it fair|is this fair|fair enough|able to|welcome to
|within my rights to|in my rights to|within my rights|in my rights|in the clear|in the clear if
|is it a problem if|would it be a problem if|would it be a problem|no problem|no problem if|pass muster
|passes muster|good enough|up to standard|up to scratch|by the book|above board|got leave to|have leave to
|let off with|safe to|ok for me to|okay for me to|fine for me to
|all right for me to|ok for us to|ok by the book|ok by the rules|okay by the rules|cleared to
|on the cards
and: +
banned: any bar to|a bar to|there any harm in|any harm in|be any harm in|anyone mind if|does anyone mind if
|would anyone mind if|would anybody mind if|does anybody mind if|will anyone mind if|will anybody mind if
|would it matter if|does it matter if|will it matter if|will anyone mind|will anybody mind|does anyone mind
|does anybody mind|would anyone mind|would anybody mind|will anyone object to|will anybody object to
|would anyone object to|would anybody object to|does anyone object to|can anyone object to|object if
|be held against me if|count against me if|be put on a charge for|put on a charge for|be written up for
|get written up for|be written up if|get written up if
|done for if|done for when|get me in trouble|get us in trouble|get you in trouble|get me into trouble
|land me in trouble
|in breach
|in breach if|in breach of the rules|stops me|stop me|stops us|stop us|stopping me|stopping us|stops me from
|stop me from
|stopping me from|anything stopping me|anything to stop me|anything stopping us|anything that stops me
|what happens if|what happens when|what would happen if|what will happen if|be in trouble if
|in trouble if|be in trouble for|in trouble for|get in trouble for|get in trouble if|get into trouble for
|get into trouble if|get into trouble|get in trouble|be done for|get done for|be done if|told off for
|get told off for|get told off if|be told off if|be told off for|pulled up for|get pulled up for
|be pulled up for|be pulled up if|get pulled up if|picked up for|get picked up for|a no - no|no - no|a no no
|off limits|off - limits|out of bounds|frowned on|frowned upon|a no - go|taboo|against orders
|against the order|against the book|anything wrong with|something wrong with|any problem with|a problem with
|any objection to|an offence|an offence to|breaking the rules|break the rules|breach of the rules
|a breach of the rules|be breaking the rules|get stopped for|be stopped for|get shouted at for
for: i 'm down for|i am down for|we 're down for|we are down for|he 's down for|she 's down for
|i was down for|booked for|due for|rostered for|detailed for|put down for|on the list for|listed for
|picked for
|chosen for|bound for|heading for|headed for
unread: inside out|outside in|wrong side out
|the sun's|the sun's out|the sun is|in the sun|used to be|want to be|wants to be|hope to be
|hopes to be|hoping to be|wish to be|as if i were
|it might|it could|there might|there could|nearly|almost|hardly|barely
degree: lovely|nice|glorious|beautiful|grand|flat|dead|nasty|filthy|awful|horrible|dreadful|terrible
|lashing with|pouring with|lashing down with|bucketing down with|tipping down with|hammering with
|teeming with|lots of|plenty of|a lot of|loads of|pelting|lashing|drenching|thickest|thicker|drifting|swirling
"""
