"""What is said beside the matter, and is taken out: greetings, excuses, doubts, and why something comes late."""

from typing import Final

from bot.intents.rewriting.words import DEED, TOLD, rules

_TURNED: Final = (  # what is done every day
    r"^((?:(?:i|we|ive|yes|yeah|already|she|he) )*(?:flip |turn )?(?:flipped|turned|did|done)"
    r"(?: (?:it|that|them|over|the (?:bags?|meat|flip)|already))*),? (?:right |just )?"
)

RULES: Final = rules(
    (r",? ?\bfat (?:thumbs?|fingers?),? (?=\d)", " "),
    (r"\b(?:ya|yes|you|u|do you|dya) (?:think|reckon)[ ?]*$", ""),
    (r",? (?:fat (?:thumbs?|fingers?)|fat fingered(?: it)?|my bad|my mistake|autocorrect|stupid phone|misread(?: it)?"
     r"|silly me)[ .!]*$", ""),
    # greetings before, thanks after
    (r"^(?:morning|evening|afternoon|arvo)(?:[,.!]+| (?:all|everyone|mate|folks|there|bot)\b[,.!]*) "
     r"(?!.*\b(?:morning|evening|afternoon)\b)(?=\S+ \S+ \S)", ""),
    (r"^(?:(?:hey+|hi+|hello|hiya|yo|ok so|so|oh(?: no)?|ah|um+|uh|hmm+|well(?=,| its| it| i | the| that| now)|btw|fyi"
     r"|heads up|quick update|update|good (?:morning|evening|afternoon)|alright|all right|right|guys?|anyway)(?: all"
     r"| there| bot| guys)?[,:.!-]*\s+(?:just )?)+(?=\S)", ""),
    (r"[,. ]+(?:thanks|thank you|thx|ta|cheers|lol|haha+|hehe|hm+|ugh+|phew|whew|argh+|wow|mate|xx+|tho|though|fwiw"
     r"|btw|i promise|i swear|for what its worth|sorry for the wait|sorry about that|sorry its late)[ .!]*$", ""),
    (r"^(?:(?:no|nah|nope|oh|ok|wait|oops|sorry|hm+|actually|hang on)[, ]+)+(?=(?:skip|not (?:yet|now|done|flipped"
     r"|turned|flipping|turning)|later|still|leave it|havent|cant)\b|(?:undo|scratch that|take that back|forget it"
     r"|never ?mind)$)", ""),
    (r"^(?:just )?(?:wanted to (?:say|let you know|tell you)|to let you know|letting you know|to report|looks like"
     r"|pretty sure|im pretty sure|i can confirm|confirming|reporting)(?: that)? ", ""),
    (r"\b(?:give or take|on the dot|or so|or thereabouts|dead on|bang on|more or less|ish)\b", ""),
    (r"^(?:can|could|would|will) (?:you|we|u) (?:please |pls )?(?=(?:remind|ping|ask|wake|text|move|push|shift"
     r"|postpone|delay|cancel|undo|stop|pause|show|switch|use|change|set|skip|delete|send)\b)(?P<rest>[^?]*)\?*$",
     r"\g<rest>"),
    (r"^(?:cant|couldnt|can not|cannot) (?=(?:i|we) (?!\w+ed\b))", "can "),
    # said late, and why
    (rf"^(?:(?:i|we|sorry|oops|ah|oh)[, ]+)*(?:totally |just )?(?:forgot to|didnt|never) (?:tell|say|mention|log|write"
     rf"|note|send|text|record|enter|report|type|give)(?: you| it| this| that| these| the last one)?(?: down| in| up"
     rf"| earlier| before)*(?: that| but)?[,:;.]? (?=(?:i|we|it|the|he|she|they|core|meat|pit|fridge) \w|at \d"
     rf"|{DEED}\b)", ""),
    (r"(?<=\w)(?<!^i)(?<!^we)(?!.*\bmatter),? ?(?:but|and|just)? ?(?:i |we )?(?:totally |completely "
     r"|just )?(?:forgot to|did not|didnt|never) (?:tell|say|log|mention|report|write|press|record|text|let|note|hit"
     r"|tap|confirm|update|answer|reply)\b[^.;,\d]*", " "),
    (rf"{_TURNED}(?:before (?:(?:going to )?(bed)(?:time)?|(?:my |the )?(?:work|school|church|leaving|shift))"
     r"|(?:before|after) (?:breakfast|coffee)|first thing|(?:when|after|once) (?:i|we) (?:got|woke) up)$",
     lambda m: f"{m[1]} at {'bedtime' if m[2] else 'breakfast'}"),
    (r"(?<=\d),? when (?:i|we|he|she) (?:last )?(?:left|looked|checked|saw|went|got|came|popped)\b[^\d?,;.]*? at "
     r"(noon|midday|\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?)$", r" at \1"),
    (r"(?<=\w),? (?:when|before|while|because|since|as soon as|once) (?:i|we|she|he|they|my \w+) (?!put it"
     r"|(?:just )?(?:opened|lifted)\b)[^\d?,;.]*(?=$|,| now \d)", TOLD),
    (r"(?<=\w),? (?:before|after) (?:work|bed|bedtime|school|leaving|going out|the gym|shift|church)\b", TOLD),
    (r",? ?(?:so )?(?:you|u) dont (?:need|have) to (?:remind|ping|ask|tell|call) me(?: again| about it)?$", ""),
    (r",? ?(?:(?:can|could|will|would) (?:you|u) help(?: me| us)?(?: with (?:it|that|this))?)(?: please| pls)?[ ?!.]*$",
     ""),
    (r"\bremind me (?=what|why|how|when)", ""),
    (r"(?<=\w),? (?:please |pls |so |and |can you )?(?:redo|re ?do|recalc\w*|re ?calculate|recompute|rework|re ?run"
     r"|update|adjust)"
     r"(?: (?:it|that|everything|all|all of it|(?:the |my )?(?:numbers|dose|grams|recipe|maths?|figures|amounts"
     r"|sums)))?"
     r"(?: please| pls)?$", ""),
    (r",? (?:no|without an?) (?:batch|plan)$", ""),
    (r"(?<=\w),\s*(?:and |so )?(?:please |pls )?(?:note|log|write|jot|record) (?:it|that|this)"
     r"(?: down| in)?(?: please| pls)?[ .!]*$", ""),
    (r",? (?:and |just )?(?:not (?:what|like|as)|like|as) (?:(?:you|u) (?:said|told me|say|wrote|gave me|wanted)"
     r"|planned|told|in the plan)[ .!]*$", ""),
    (r"\b(?:i |we )?(?:nearly|almost) (?:forgot|missed)(?: (?:it|that|the \w+))?,? (?:but |and )?", ""),
    (r"^my (?:bad|fault|mistake)[,.]? (?=\w)", ""),
    (r"\bno dst\b(?: here)?", ""),
    (r"(\b(?:not (?:flipping|turning)(?: \w+){0,2} (?:tonight|today)|skip(?:ping)? (?:\w+ ){0,3}(?:tonights?|todays?"
     r"|tomorrows?|flip|turn|one))),? (?:cos |cause |because |as |since )?(?:im|i am|ill be|we are|were|well be) (?:out"
     r"|away|busy|at work|not home|not in|tired|in bed)(?: (?:tonight|today|tomorrow|all (?:day|night)))?$", r"\1"),
    (r"^(?:(?:im|i am|ok|right|well|just|were|we are) )*(?:(?:going|off|heading) to |in )?(?:bed(?:time)?|sleep)"
     r"(?: now| already)?,? (?:and |but |so )?(?=(?:ill|i will|will|gonna|skip|later|not)\b)", ""),
    (r"^(?:(?:im|i am|sorry|we are) )*(?:not (?:home|there)|out|away|at work|busy|(?:too )?tired|asleep|sick)"
     r"(?: tonight| now)?,? (?:so )?(?=skip\b)", ""),
    (r"(?<=[a-z]) (?:lol|haha+|lmao|hehe)(?= [a-z])", ","),
    (r"\b(?:im |i am )?(?:an? )?(?:1st|first|1)[- ]?timer?\b(?! (?:here|doing|trying|at|with|for)\b)[.,;!]* ?", ""),
    (r",? ?\bat (?:the|my|our) last (?:look|check|reading|go)\b,? ?", " "),
    (r",? (?:and |but )?(?:i )?(?:dunno|dont know|do not know|not sure|no idea|no clue|unsure|who knows) (?:exactly )?"
     r"when(?: though)?[ .!]*$", TOLD),
    (r"(?:(?<=\d)|(?<=in there)),? (?:and |but )?(?:i )?(?:dunno|dont know|not sure|no idea|no clue|who knows)"
     r" (?:for )?how long[ .!]*$", TOLD),
    (r"^(?:i am|im) (?:so |very )?sorry to (?:say|report|tell you)(?: that)?,? |^i (?:must|have to) (?:confess"
     r"|admit)(?: that)?,? ", ""),
    (r",? ?\b(?:and |but )?(?:i |we )?(?:didnt|havent|not|never) (?:look(?:ed)?|check(?:ed)?|measured?|read"
     r"|seen?)(?: it| again| since| after(?: that)?| then)*$", ""),
    (r",? (?:to|so it) (?:speed|hurry)(?:s)?(?: (?:it|things))? (?:up|along)$", ""),
)  # fmt: skip
