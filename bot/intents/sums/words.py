"""The words by which a line asks for a sum without a question's words, and those that are no matter of ours."""

from typing import Final

from core import patterns as re

NOT_OURS: Final = re.compile(  # or asked of what was typed before
    r"[$€£]|\b(?:euros?|dollars?|bucks|costs?|price|cheap\w*|fever|bab(?:y|ies) weigh\w*|ibuprofen|paracetamol|medicine"
    r"|(?:we|i) (?:entered|typed)|did (?:i|we) (?:enter|type|put in)|thin(?:ner|nest)? (?:end|side|part|tip|edge)"
    r"|how much (?:is|are) .*\bat the (?:store|shop|market|butchers?)"
    r"|miles?|km|kilometres|calories|kcal|protein|carbs|(?:how (?:much|many)|boil|cook|bake) (?:\w+ ){0,3}"
    r"(?:beers?|wine|eggs?|potatoes|rice|pasta|noodles|bread|cake|salad|flour|beans|corn))\b"
)
# what asks without a question's words, and is said of no batch that begins
WANTS: Final = re.compile(
    r"\b(?:what|when|how|vs|versus|(?<!this )(?<!last )(?<!next )(?<!same )times?|hours for|hrs|amounts?|amt"
    r"|doable|aim\w*(?: for| at)? \d{3} ppm|(?:last|latest) day"
    r"|start date|dose|ppm|weigh|weight (?:of|after)|cooked weight|yield|shrink\w*"
    r"|thaw\w*|portions?|servings?|serves|feeds|defrost\w*|sodium|salometer|salinometer|boil\w*|altitude|convert|final"
    r"|left (?:after|(?:from|out of) (?=\d))|(?:un)?till? (?:its )?done"
    r"|(?:rub|honey|syrup|spices?|pepper|coriander|seasoning|salt|sugar|ice|charcoal|lump|fuel|cure|pellets|bag|tub"
    r"|bucket|water) (?:size |needed )?for"
    r"|per (?:slice|portion|serving)|in (?:a|one|1) [\w .]{0,8}(?:slice|portion|serving)"
    r"|need \d[\d.]*(?![\d.]| ?(?:kg|kilo|lb|pound|g\b))|cure total|total cure|instead|only (?:got|shows|have)"
    r"|(?:ok|okay|fine|good|safe) (?:on|by|until|till?) (?:\w{3,6}day|tomorrow)"
    r"|(?:bucket|tub|bag|pot) size|^(?:salt|sodium|nitrite) in (?=\d)|price|costs?|\bice (?:to|needed|enough)\b"
    r"|start time|pick-?up|pickle (?:weight|and)"
    r"|(?:cups?|tbsps?|tsps?) (?:of )?(?:\w+ ){1,3}(?:to|in|into|as|for) (?:table|kosher|fine|coarse|sea|flake\w*)"
    r"|in (?:grams?|g|ml|spoons|tsp|teaspoons)|(?:cups?|tbsps?|tsps?) (?:of )?(?:\w+ ){1,3}(?:g|grams)(?=\W*$)"
    r"|(?:people|guests|heads) .*each|need for|needed for|or (?:double|twice)"
    r"|cure grams|grams (?:and|n|&|plus) (?:the )?(?:salt|sugar)|will \d|recipe"
    r"|(?:grams?|amounts?|weights?)(?: of)? each|\d{1,3} ?ppm|raw to cooked"
    r"|equilibrium(?!.*\d ?(?:in\b|inch|mm|cm))|frozen .*water$|% of (?=\d)"
    r"|scale (?:only|goes|shows|rounds|jumps|does|starts|is|by)|needed"
    r"|(?:grams?|hours?)(?=(?: pls| please)?\W*$| at \d)|start when"
    r"|(?:last|latest) start|days from|weight(?=\W*$)|grams of|^grams? (?:of )?(?:cure|pink|nitrite|salt|sugar|curing)"
    r"|frozen .*(?:want|need|going|like) (?:it|to (?:start )?(?:cur|brin|smok|cook)(?:e|ing|))"
    r"|sugar (?:is )?half|half the salt|has salt in|raw weight"
    r"|(?:salt|sugar|pink|cure|kosher),? (?:and|n|&|plus|\+) (?:the )?(?:salt|sugar|pink|cure|kosher)(?: salt)?"
    r"(?=\W*$| pls| please| for \d| amounts?)|(?:salt|sugar|pink|cure),? (?:salt|sugar|pink|cure)(?=,? for \d)"
    r"|want \d[\d.]* ?%"
    r"|enough(?=\W*$)|days old|simmer temp|each for \d|(?:days|total)(?=\W*$)|pellets for|freezer to fridge"
    r"|out of (?:the )?freezer (?:ready|by|for|to)|\d ?(?:l|qts?|gal\w*|lit(?:er|re)s?) \w+ (?:big )?enough"
    r"|need (?:the )?(?:grams (?:of )?)?(?:cure|salt|pink|sugar)|days in (?:the )?(?:cure|brine|bag)"
    r"|at \d{2,3}(?: ?[cf])? (?:to|until|till) \d{2,3}(?: ?[cf])?(?=\W*$))\b"
)
REPLACED: Final = re.compile(
    r"\b(?:lost|(?:went|gone|tipped) (?:down|out|over)|put back|in its place|knocked over|leak\w*|spill\w*|spilt"
    r"|top\w*|more|another|replace\w*|refill|dripped|make it up)\b"
)
LOST: Final = re.compile(  # or what stands in the bag
    r"\b(?:lost|leak\w*|spill\w*|spilt|dripped|ran out)\b"
    r"|\b(?:cups?|pints?) (?:of )?(?:the )?(?:juice|liquid|brine|fluid|stock|broth|goo)\b"
)
SWEET: Final = re.compile(r"\b(?:sugar\w*|sweet\w*|honey|syrup|maple|molasses|treacle|demerara|muscovado)\b")
TANK: Final = re.compile(  # a fuel by its vessel or its weight, and no meat
    r"\b(?:propane|tank|cylinder|bottle|sack)\b"
    r"|\d ?(?:kg|kilos?|lbs?|pounds?) (?:bags? )?(?:of )?(?:charcoal|lump|coals?|briq\w*|pellets?)\b"
)
