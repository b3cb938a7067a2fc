"""Why a sum came to what it did: the rule in a sentence, and where it is from."""

from typing import Final

from bot.wording import answers
from bot.wording.language import Words, later
from core.sources import every_source

RULES: Final = Words({
    "convert": later("Exact factors: the pound and inch of 1959, US kitchen volumes, and °F as 1.8 °C steps from 32."),
    "spoons": later("Level spoons and cups as weighed by many cooks; they differ so much that only weight is a measure."),
    "dose": later("Target in mg/kg, times what is counted, over the strength of the curing salt; then held to the limit."),
    "ppm": later("Nitrite that goes in, over the meat alone when dry, over meat and pickle in a brine."),
    "by_packet": later("The packet's grams over its meat, times yours; then over the meat as nitrite, held to the limit."),
    "swap": later("The grams times their nitrite share, over the share of the other kind; then held to the limit."),
    "stock": later("The dose over the share of curing salt in all of the stock."),
    "blend": later("The nitrite of the curing salt over all that is mixed."),
    "in_pickle": later("The nitrite over all of the pickle, times the share that is pumped; then held to the limit."),
    "soaked": later("The salt of the meat, spread over meat and water together; by the hour it comes only part of the way."),
    "thinned_to": later("The salt stays as it is; over the share that is wanted it tells how much all has to weigh."),
    "burns": later("What you burn in an hour, times the hours."),
    "at_rate": later("So much for each kilo or pound, times your meat."),
    "brine": later("Salt over salt and water together; 100 degrees on the salometer take no more salt."),
    "salometer": later("A brine that takes no more salt at 60 °F has 100 degrees; in between it goes evenly."),
    "equilibrium": later("All the salt over meat, water and salt, since it ends up even in all of them."),
    "salt_for": later("The share times all that is counted: the meat, and the water of a brine with it."),
    "fish_brine": later("One part of salt to seven of water by volume, as home smoking leaflets have it, and left by the clock."),
    "days": later("Salt and nitrite creep in from the surface; twice as thick takes four times as long. 9 in 10 count."),
    "shopping": later("Cooked portions of 100 to 200 g, over what trimming, fire and slicing leave of the raw weight."),
    "portions": later("What trimming, fire and slicing leave of the raw weight, over portions of 100 to 200 g."),
    "yield": later("Red meat cooked tender leaves 55 to 65 %, birds 70 to 78 %, loin and ham 80 to 90 %, bacon 85 to 95 %; a packer is trimmed by 20 to 30 %."),
    "thaw": later("24 h in the fridge for each 4 to 5 lb, or half an hour a pound in cold water that is changed."),
    "scale": later("A scale that shows whole grams is off by half a step to a whole one; one part in ten is ten times finer."),
    "rub": later("25 to 40 g of rub for each kilo."),
    "lethality": later("Published time and temperature for a kill of 6.5 logs in red meat and 7 in birds, the row below counting."),
    "cooling": later("From 130 to 80 °F in 1.5 h and to 40 °F in 5 h more, or from 135 to 70 °F in 2 h and to 41 °F in 6 h."),
    "cold_by": later("From 130 to 80 °F in 1.5 h and to 40 °F in 5 h more; cured to the middle in 5 h and to 45 °F in 10 h more."),
    "fire_out": later("Below 140 °F without heat the clock runs from the last good reading: two hours, in the worst case."),
    "climb": later("Whole meat passes 130 °F within 6 h, as the guideline has it; birds and opened meat pass 140 °F within 4 h, by the trade."),
    "chill": later("Conduction through the piece, from one temperature throughout; ice water takes heat far faster than air."),
    "cook": later("The heat balance of the surface: what the pit gives, less what sweating takes; tuned on real cooks."),
    "fuel": later("What walls and flue lose at that pit, or what cooks report, whichever is more, with a reserve."),
    "altitude": later("The pressure of the standard atmosphere at that height, and the vapour pressure of water."),
    "sugar": later("Half a percent to one and a half of the meat, and of the water with it."),
    "dilute": later("The salt stays as it is; water makes it a smaller share."),
    "topup": later("As much salt and nitrite for each litre as the weighed mix of meat and water comes to."),
    "tsp_of": later("A level teaspoon of curing salt as weighed by many cooks; spoons differ by a quarter."),
    "brine_amount": later("Water for 30 to 50 % of the meat in a bag, 60 to 100 % in a tub, and a quarter more room."),
    "inject": later("A tenth of the weight as a rule; the nitrite is counted over the meat that is injected."),
    "nitrite_in": later("The weight times the nitrite share; or the level times the kilos."),
    "recipe": later("One weight over the other, times everything; then the nitrite is held to the limit."),
    "start_by": later("Days in the cure, a day to dry, one for the fire and a night to chill, counted back from the meal."),
    "out_on": later("The day that it goes in is counted as none; so many days on from there, by the calendar."),
    "makes_it": later("The hours between going on and the meal, less the rest, beside those that such pieces need."),
    "light_by": later("The meal, less the rest, the hours that nine in ten such pieces need, and an hour for the fire."),
    "eta": later("The straight line through two readings, each read to half a degree."),
    "hold_for": later("Conduction and the loss of a wrapped piece in still air, until its middle is at 140 °F."),
    "ice": later("The heat of the meat and the water, over what ice takes to melt and to warm up to 4 °C."),
    "brine_cools": later("Free convection, walls and radiation of a pot as high as it is wide; ice by what it takes to melt."),
    "meat_for": later("The nitrite that it holds, over the level in mg/kg: the dose the other way round."),
    "price": later("The price over what trimming and fire leave of the raw weight."),
    "brine_ice": later("The heat of the boiled water and of the tap's, over what ice takes to melt and to warm up to 4 °C."),
    "loss": later("What came off over what went on."),
    "steam": later("45 to 60 min a kilo from the fridge; leftovers are heated to 165 °F."),
    "fish_hours": later("Salt that diffuses in from the brine, from fish in its skin to fish without it."),
    "frozen_fish": later("The freezer's warmest and the hours at it, held against the food code; colder or longer is as good."),
    "keeps": later("The cold storage chart counts from the cooking, and the shorter end of its range is the date."),
    "mix": later("Each share times all that is counted; the nitrite of the curing salt is then held to the limit."),
    "spice": later("6 to 8 g of pickling spice for each kilo."),
    "sodium": later("39 % of salt is sodium; between salt that left with the juice and salt that all stayed."),
})  # fmt: skip
SOURCES: Final = {
    "dose": ("FSIS_HANDBOOK_1995", "CFR_9_424"), "ppm": ("FSIS_HANDBOOK_1995", "CFR_9_424"), "brine": ("SALOMETER",),
    "salometer": ("SALOMETER",), "fish_brine": ("HOT_SMOKED_FISH", "COMMON_PRACTICE"), "thaw": ("USDA_THAWING",),
    "days": ("CRANK_1975", "SPRINGER_2015", "HEATON_2000", "CURE_CASE"), "lethality": ("FSIS_COOKING_2021",),
    "cooling": ("FSIS_COOLING_1999", "FOOD_CODE_COOLING"), "cold_by": ("FSIS_COOLING_1999",), "fire_out": ("FSIS_DANGER_ZONE",), "chill": ("INCROPERA",),
    "climb": ("FSIS_COOKING_2021", "COMMON_PRACTICE"),
    "cook": ("COOK_CASE", "TAMU_BRISKET"), "fuel": ("CHARCOAL_HEAT", "PROPANE_HEAT", "COMMON_PRACTICE"),
    "altitude": ("ASHRAE_PSYCHROMETRICS",), "sodium": ("ATOMIC_WEIGHTS", "COMMON_PRACTICE"), "convert": (), "meat_for": ("FSIS_HANDBOOK_1995",), "brine_cools": ("INCROPERA", "FSIS_DANGER_ZONE"), "brine_ice": ("INCROPERA", "COMMON_PRACTICE"), "out_on": (), "makes_it": ("COOK_CASE", "TAMU_BRISKET", "COMMON_PRACTICE"),
    "topup": ("FSIS_HANDBOOK_1995", "COMMON_PRACTICE"), "inject": ("FSIS_HANDBOOK_1995",), "swap": ("FSIS_HANDBOOK_1995",), "nitrite_in": ("FSIS_HANDBOOK_1995",),
    "mix": ("FSIS_HANDBOOK_1995", "COMMON_PRACTICE"), "in_pickle": ("FSIS_HANDBOOK_1995", "CFR_9_424"), "burns": (),
    "recipe": ("FSIS_HANDBOOK_1995", "COMMON_PRACTICE"), "light_by": ("COOK_CASE", "TAMU_BRISKET", "COMMON_PRACTICE"),
    "hold_for": ("INCROPERA", "FSIS_DANGER_ZONE"), "ice": ("INCROPERA", "CHOI_OKOS_1986"),
    "steam": ("COMMON_PRACTICE", "FSIS_SAFE_TEMPERATURES"), "keeps": ("FSIS_COLD_STORAGE", "HOT_SMOKED_FISH"),
    "frozen_fish": ("FOOD_CODE_PARASITES", "HOT_SMOKED_FISH"), "fish_hours": ("HOT_SMOKED_FISH", "CRANK_1975"),
}  # fmt: skip
PRACTICE: Final = ("COMMON_PRACTICE",)


def why(kind: str) -> str:
    """The rule of a sum, and its sources with how well each is known."""
    keys = SOURCES.get(kind, PRACTICE)
    rule = RULES[kind]
    return f"{rule}\n{answers.cite([every_source()[key] for key in keys])}" if keys else rule
