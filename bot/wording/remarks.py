"""The question, or the word, that a short remark is met with, by what it may be."""

from typing import Final

from bot.wording import language

REMARKS: Final = {
    "in_the_fridge": language.later(
        "If the meat is in its brine, tap it. The brine alone is right: it cools, and is read before the meat goes in."
    ),
    "until": language.later("Until when? Type the hour, like «remind me at 18:00», and I call you then."),
    "away_until": language.later(
        "Until when are you away? Type it like «away from thursday until sunday», and I know when to call again.\n"
        "Whoever minds it meanwhile: «jo takes the flips from thursday»."
    ),
    "half_hour": language.later(
        "«{typed}» is half an hour before to some, and half past to others. Tap which, or type it like 7:30."
    ),
    "out": language.later("Is the fire out, or is the meat off? Tap it: a fire that is out counts from now."),
    "off": language.later(
        "Off the fire, or does something smell off? Tap it; what smells sour or rotten is thrown away."
    ),
    "forgot": language.later(
        "What was forgotten: a step, or the curing salt? Tap it, or say it, like «forgot the flip»."
    ),
    "smell": language.later(
        "How does it smell: of spice and smoke, or sour, rotten, like eggs?\nSour, rotten or like eggs: throw it away. "
        "A clean smell proves nothing either; «is it safe» asks the record."
    ),
    "clean_smell": language.later(
        "That is how it should smell. It proves nothing by itself: the fridge and the days have to be right too, and «is it safe» asks the record."
    ),
    "spoiled": language.later(
        "Throw it away, all of it, and do not taste it: sour, rotten, like eggs or ammonia, slime or fuzz say that it went off.\n"
        "No rinsing, salt or heat brings it back. Wash your hands, the shelf and what it touched."
    ),
    "look": language.later(
        "Where is it: outside, or in the middle of a slice? Raw or cooked?\nSay it like «grey 6 mm in the middle of 44»; "
        "slime or green is thrown away."
    ),
    "late": language.later(
        "What is late: the meat, the meal, or you? Say it like «dinner at 19:00», «core 158» or «later»."
    ),
    "enough": language.later("Of what: cure, salt, days, charcoal, or meat for the guests? Ask it with its word."),
    "soaking": language.later(
        "Is it out of the cure for good? Tap it, if it is; if it goes on, nothing changes.\n"
        "Soak it in the fridge, in fresh cold water. «how long should i soak it» tells how long."
    ),
    "swapped": language.later(
        "Which number was which? Type the one that stands wrong, like «the 150 was the pit», and I put it right.\n"
        "Two new ones are told by their names, like «core 158 pit 245»."
    ),
    "no_readings": language.later(
        "I go on asking: what you read decides when it is done, and whether it can be eaten.\n"
        "Beside the fire you may leave one out; in the chill I cannot speak for it without."
    ),
    "no_step": language.later(
        "«{typed}» is no step of the plan, and I call for those alone: set a clock of your own for it."
    ),
    "hotter": language.later("How hot shall it run? Type it like «run the pit at 275», and the hours move with it."),
    "move": language.later(
        "Move what: the meal, or the meat?\nThe meal moves like «sunday instead» or «dinner at 19:00»; "
        "where the meat lies is told like «in the fridge now»."
    ),
    "change": language.later(
        "Change what? Tap it, or type it with its word, like «dinner at 19:00» or «it weighs 3.1 kg»."
    ),
    "size": language.later(
        "What is it about: the piece, or the time? A piece that does not fit may be cut, its dose stays.\n"
        "For another hour of the meal type it, like «dinner at 19:00»; «how much longer» asks when it is done."
    ),
    "not_then": language.later(
        "What is not to be then: the meal, or a step? Type when instead, like «sunday instead» or «remind me at 09:00»."
    ),
    "half": language.later("Half what: the meat, how far it is, or half an hour? Say it with its word, or tap it."),
    "again": language.later(
        "Again what? A new piece begins with its weight, like «3.2 kg flat»; a step or a number is said anew, like «flipped»."
    ),
    "which": language.later("Which one is «{typed}»? Say it with its step or its piece, like «flipped» or «rinsed»."),
    "which_new": language.later(
        "Which piece is «{typed}»? Nothing is under way here: a new one begins with its weight, like «3.2 kg brisket flat»."
    ),
    "spoons": language.later(
        "«{typed}» of what, and for what weight of meat? Spoons and cups differ, so I take no dose by them.\n"
        "Weigh it and type it, like «put in 12 g of curing salt»; the packet tells how strong it is, like «cure is 6.25 %»."
    ),
    "leave": language.later(
        "Leave what: this flip, or the meat where it is for longer? One missed flip does no harm.\n"
        "For longer, say by how many days; beside the fire or in the warm nothing is left."
    ),
    "moved": language.later("What moved, and to where? Say it with its number, like «pit 245» or «core 158»."),
    "cured": language.later(
        "What is cured already gets no cure from me: another dose would come on top of it. I plan raw meat.\n"
        "Ask «pastrami from bought corned beef» for how to soak and smoke it."
    ),
    "thickest": language.later(
        "Which is it at the thickest spot? The cure has to reach the middle there. Tap it, or type it like 48 mm or 1.9 in."
    ),
    "bound": language.later(
        "Which number does it show? A limit hangs on it, so «nearly» and «over» are not noted.\n"
        "Type it as you read it, like «core 66 c» or «fridge 46 f»."
    ),
    "dial": language.later(
        "Good, if that is the fridge. A dial tells no degrees: read it again in a glass of water beside the meat, and type it, "
        "like «fridge 38 f»."
    ),
    "gone_off": language.later(
        "Off the fire, which is noted, or gone off? What smells sour, rotten or of eggs is thrown away, untasted.\n"
        "If it smells clean, nothing is to be done: ask «is it safe» and I look at its record."
    ),
    "not_core": language.later(
        "On the bone, at the skin or the surface it reads more than the middle, so that is not noted.\n"
        "Read the thickest spot, away from bone and fat, and type it, like «core 66 c»."
    ),
    "guessed": language.later(
        "Is that read off a thermometer, or a guess? A guess is not noted: meat is judged by what was read.\n"
        "Tap it if you read it, else read it now and type the number."
    ),
    "doubted": language.later(
        "«{typed}»: are you sure? Tap it if it was done. If you are not, look, or ask who was there; nothing is noted yet."
    ),
    "grams": language.later(
        "How many grams, and is it curing salt or plain salt? I do not guess a dose.\n"
        "Type it like «put in 12 g of curing salt»."
    ),
    "odd": language.later(
        "What is odd about it: how it smells, looks or feels? Sour, rotten, slimy, green or furry: throw it away.\n"
        "Else say it in words, like «grey outside» or «fridge 38 f»."
    ),
    "ready": language.later(
        "Ready for what: a step that is done, or the meat to come off? Tap it, or say it, like «flipped» or «core 203 f»."
    ),
    "halved": language.later(
        "How thick is the thickest of the pieces now? Type it, like 40 mm or 1.6 in: it sets the days anew.\n"
        "The dose stays as long as all of them lie in it."
    ),
    "meal_off": language.later(
        "Is the whole batch to be dropped, or only the date of the meal? Tap it, or type a new day; nothing is changed yet."
    ),
    "watch": language.later(
        "I read no thermometer: I know only what you type, so I cannot watch it for you.\n"
        "Type a reading, like «pit 245 f», and I say what to do. «quiet» keeps all but the fire and the chill still."
    ),
    "more": language.later(
        "More of what: days, charcoal, salt in the next one, or meat for the guests? Ask it with its word.\n"
        "Curing salt is never added on a guess."
    ),
    "longer": language.later(
        "Longer where: in the cure, on the fire, or until I call again? Tap it, or say it whole, like "
        "«remind me in 1 hour» or «meal 1 hour later»."
    ),
    "salty": language.later(
        "What tastes too salty: the brine, or a fried slice of the meat?\n"
        "The brine always does; no water goes in, its salt is weighed for the meat and the water together.\n"
        "A fried slice: soak the meat in cold water in the fridge, and fry another."
    ),
    "more_in": language.later(
        "Do you ask whether it needs more, or did more go in?\nAsk it like «how salty will it be»; what went in is told "
        "with its weight, like «put in 12 g of curing salt».\nCuring salt is never added on a guess."
    ),
    "is_ok": language.later(
        "Ok in which way: is it safe to eat, does it look or smell right, or is the hour all right? Tap it, or ask it with its word."
    ),
    "added": language.later(
        "Another piece takes its own dose: put it into a bag of its own, and start it with its weight, like «start 3 lb flat».\n"
        "In the same brine the dose of both would be wrong."
    ),
    "took_out": language.later(
        "Out of the cure for good, or only out of the fridge for a moment? For good is early: tap it then.\n"
        "If it goes back in, nothing is noted; out of the cold it may be for 2 h in all."
    ),
    "off_early": language.later(
        "Off the fire for good, or only for a moment? For good is early: tap it then.\n"
        "If it goes back on, nothing is noted: keep the time off short, and read the core once it is on again."
    ),
    "out_of_ice": language.later(
        "Out of the ice, or out of the fridge? Into the fridge, bare on a rack or in foil: tap how it lies there.\n"
        "Out in the warm it is not chilled: back into the cold with it, until the middle is at 4 °C (40 °F)."
    ),
    "out_to_eat": language.later(
        "Out of the fridge to slice it, or to eat it? Tap it. Out of the cold it may be for 2 h in all."
    ),
    "pink": language.later(
        "Cured meat stays pink however long it cooks, so the colour tells nothing. What does the coldest spot read?\nType it like «core 71 c»."
    ),
    "other_salt": language.later(
        "Which salt is it: a curing salt with its percent, or plain salt? The dose hangs on it, so nothing is noted.\n"
        "Type it like «cure is 6.25 %», or «used table salt as cure»."
    ),
    "forgot_extra": language.later(
        "No harm: sugar and spice carry neither the cure nor the safety. Stir it in now, dissolved in a little of the liquid, or leave it out."
    ),
    "put_in": language.later(
        "What went in, and where: onto the fire, into the ice, or into the fridge?\nSay it like «meat is on», «in the ice bath» or «in the fridge»."
    ),
    "other_weight": language.later(
        "«{typed}»: the weight that you deny is not the one that I have, so nothing is changed yet. Tap it if that is what it weighs."
    ),
    "which_hour": language.later(
        "At what hour was it on that day? Type both, like «in the bag since thursday 20:00»: hours and days are counted from it."
    ),
    "twice": language.later(
        "«{typed}»: the clocks went back that night, so that hour came twice, and the safety hangs on which it was.\n"
        "Say it by how long ago it was, like «core 80 f 50 min ago», or «off 2 h ago»."
    ),
    "since": language.later(
        "«{typed}»: in the morning or in the evening? The safety hangs on it.\n"
        "Type it like «since 7 am», or how long it was at most, like «2 hours»; «no idea» is an answer too."
    ),
    "taken_back": language.later(
        "«{typed}»: shall I take back what was noted of it? Hours are counted from that, so tap it, or say what is so."
    ),
    "extra_left_out": language.later(
        "All right: that is no step of the plan, so nothing changes, and no safety hangs on it."
    ),
    "chilled_on": language.later(
        "How does it lie in the fridge: bare on a rack, or in its bag or foil? Tap it, the hours of the chill hang on it.\n"
        "The middle is still read until it is at 4 °C (40 °F)."
    ),
    "fridge_days": language.later(
        "Of which days are those? Type each with its day and hour, like «fridge 3 c at 8:00».\n"
        "Or tap it, if the fridge stayed at 4 °C (40 °F) or below all that time."
    ),
    "eat_now": language.later(
        "Above 60 °C (140 °F) slice it and serve it now. Cooler than that: heat it through to 74 °C (165 °F), steaming, first.\n"
        "What is left goes into the ice or the fridge at once, and the chill is read on."
    ),
    "other_meat": language.later(
        "That is another meat, so nothing of it is noted here: start it by its weight, like «start 1 kg chicken».\n"
        "Birds to 74 °C (165 °F), and never where raw juice drips on the other."
    ),
    "fuelled": language.later(
        "Good. Give it ten minutes with the vents open, then read the pit and send it, like «pit 121 c»."
    ),
    "iced": language.later(
        "Good, that keeps the chill going: covered, and moved about now and then. Read the middle next, like «core 18 c»."
    ),
    "surface": language.later(
        "The outside is cold long before the middle, so nothing is noted. Read the middle at the thickest spot, like «core 18 c»."
    ),
    "tasted": language.later(
        "A taste does no harm, and the chill goes on: it is not sliced for good yet. Read the middle, like «core 18 c»."
    ),
    "froze": language.later(
        "Back into the fridge with it: what is frozen takes no cure, so those hours do not count.\n"
        "Frozen through, it thaws in the fridge first. Was it more than a few hours, add a day, like «one day longer»."
    ),
    "spiced": language.later(
        "Spice changes neither the dose nor the days, so there is nothing to note.\n"
        "More salt, curing salt or water does change it: say that with its weight, like «put in 12 g of curing salt»."
    ),
    "melted": language.later(
        "More ice at once, as much as covers it, and move it about: without ice the chill stands still.\n"
        "Read the middle in half an hour, like «core 18 c»."
    ),
    "freezer": language.later(
        "Read the middle first: until it is at 4 °C (40 °F) the chill counts on, in a freezer too. Type it like «core 5 c».\n"
        "Once it is cold and for keeping, say «froze all of it»."
    ),
    "step": language.later("«{typed}»: is it done, or do you ask when? Tap it, or say it in other words."),
    "reheated": language.later(
        "Then it is hot enough: serve it now. What is left goes back into the fridge within 2 h.\nTap it when it is eaten."
    ),
    "reheat": language.later(
        "Heated again, it is eaten from 74 °C (165 °F) in the middle: read it there, and heat it on until then."
    ),
    "guests": language.later("How many will eat in all? Ask «how much for 16 people», and I say what that takes."),
    "thawed_through": language.later(
        "Soft all through, with no ice in the middle? Then tap it; ice keeps the cure out, so feel the thickest spot first."
    ),
    "turned": language.later("What turned: the bag, or how it looks or smells? Tap the flip if it is done."),
    "swings": language.later(
        "Swings of 8 to 14 °C (15 to 25 °F) about the mean do no harm, the meat feels the mean. Wider: ash, wind or damp fuel.\n"
        "Nothing is noted yet: tap what it reads now, or type it like «pit 121 c»."
    ),
    "stuffing": language.later(
        "All right, empty: so its middle is past 60 °C (140 °F) sooner. A stuffing is baked apart, to 74 °C (165 °F)."
    ),
}
