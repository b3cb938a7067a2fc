"""The bibliography: one Source for each paper, table, rule or custom that the code or the bot cites.

`status` is CONFIRMED where the figure was read in the publisher's text or another body's copy of it,
MEMORY where it is recalled and not seen, PRACTICE for common practice without a source, DERIVED for
arithmetic of our own, TUNED for a value chosen so that a stated case is reproduced. docs/sources.md
lists the same; a test holds the two equal.
"""

from core import fish_sources
from core.source import Source, Status

__all__ = ["Source", "Status", "every_source"]

FSIS_COOKING_2021 = Source(
    "FSIS_COOKING_2021",
    "FSIS Cooking Guideline for Meat and Poultry Products (Revised Appendix A)",
    "USDA FSIS, Tables 2, 3, 4 and 6; Come-Up-Time Option (Table 5, gap 6)",
    "2021",
    "CONFIRMED",
)
FSIS_COOLING_1999 = Source(
    "FSIS_COOLING_1999",
    "Compliance Guidelines for Cooling Heat-Treated Meat and Poultry Products (Appendix B)",
    "USDA FSIS",
    "1999",
    "CONFIRMED",
)
FSIS_COOLING_2021 = Source(
    "FSIS_COOLING_2021",
    "FSIS Stabilization Guideline for Meat and Poultry Products (Revised Appendix B)",
    "USDA FSIS GD-2021-13",
    "2021",
    "MEMORY",
)
FOOD_CODE_COOLING = Source("FOOD_CODE_COOLING", "FDA Food Code, cooling", "US FDA, 3-501.14(A)", "2022", "CONFIRMED")
FSIS_SAFE_TEMPERATURES = Source(
    "FSIS_SAFE_TEMPERATURES", "Safe Minimum Internal Temperature Chart", "USDA FSIS", "2020", "CONFIRMED"
)
FSIS_COLD_STORAGE = Source(
    "FSIS_COLD_STORAGE", "Cold Food Storage Chart", "FoodSafety.gov / USDA FSIS", "2023", "CONFIRMED"
)
ASK_USDA_GIBLETS = Source(
    "ASK_USDA_GIBLETS",
    "What if you accidentally cook giblets in their packaging?",
    "AskUSDA, as read out in Food Safety in a Minute 207, Washington State University Extension",
    "2022",
    "CONFIRMED",
)
FSIS_DANGER_ZONE = Source(
    "FSIS_DANGER_ZONE", "Danger Zone (40 °F to 140 °F), the two-hour rule", "USDA FSIS", "2017", "CONFIRMED"
)
CFR_9_424 = Source(
    "CFR_9_424", "9 CFR 424.21(c) and 424.22(b), curing agents", "US Code of Federal Regulations", "1999", "CONFIRMED"
)
CFR_21_172 = Source(
    "CFR_21_172",
    "21 CFR 172.170 and 172.175, nitrate and nitrite in home curing mixes",
    "US Code of Federal Regulations",
    "1977",
    "CONFIRMED",
)
FSIS_HANDBOOK_1995 = Source(
    "FSIS_HANDBOOK_1995",
    "Processing Inspectors' Calculations Handbook (Directive 7620.3)",
    "USDA FSIS, chapter 3",
    "1995",
    "CONFIRMED",
)
CFIA_MANUAL = Source(
    "CFIA_MANUAL", "Meat Hygiene Manual of Procedures, chapter 4 (archived)", "CFIA, 4.13.1", "2014", "CONFIRMED"
)
EU_2023_2108 = Source(
    "EU_2023_2108", "Regulation (EU) 2023/2108, nitrites and nitrates", "Official Journal", "2023", "MEMORY"
)
UK_1333_2008 = Source(
    "UK_1333_2008", "Retained Regulation (EC) 1333/2008, Annex II category 08", "UK statute", "2008", "MEMORY"
)
HEATON_2000 = Source(
    "HEATON_2000",
    "Minimum nitrite levels required to develop cooked pink color",
    "Heaton et al., Meat Science 55:321-329",
    "2000",
    "CONFIRMED",
)
CRANK_1975 = Source(
    "CRANK_1975", "The Mathematics of Diffusion, 2nd ed.", "J. Crank, eqs 4.37-4.40, 5.33, 6.30", "1975", "MEMORY"
)
SPRINGER_2015 = Source(
    "SPRINGER_2015",
    "Water Stress in Biological, Chemical, Pharmaceutical and Food Systems, ch. 47 (NaCl in pork loin)",
    "Springer Food Engineering Series",
    "2015",
    "CONFIRMED",
)
HANSEN_2008 = Source(
    "HANSEN_2008", "MRI of salting pork", "Hansen et al., Meat Science 80:851-856", "2008", "CONFIRMED"
)
NORDIN_1969 = Source(
    "NORDIN_1969", "The depletion of added sodium nitrite in ham", "Nordin, Can. Inst. Food Sci.", "1969", "MEMORY"
)
CURE_CASE = Source(
    "CURE_CASE",
    "A 3.2 kg flat, 45 to 55 mm, grey in the middle after 3 days in 3.8 l of brine",
    "common practice, no source",
    "-",
    "TUNED",
)
COOK_CASE = Source(
    "COOK_CASE",
    "A 3.4 to 3.6 kg flat at 121 °C, unwrapped: 10 h 40 min to 87 °C",
    "common practice, no source",
    "-",
    "TUNED",
)
COMMON_PRACTICE = Source("COMMON_PRACTICE", "Common practice among cooks", "no source", "-", "PRACTICE")
JUDGEMENT = Source("JUDGEMENT", "Judgement of the authors, a stated default", "no source", "-", "PRACTICE")
USDA_SR28 = Source(
    "USDA_SR28", "National Nutrient Database for Standard Reference, release 28", "USDA", "2016", "CONFIRMED"
)
CHOI_OKOS_1986 = Source(
    "CHOI_OKOS_1986",
    "Effects of temperature and composition on the thermal properties of foods",
    "Choi and Okos, as in ASHRAE Refrigeration Handbook ch. 19, table 3",
    "1986",
    "CONFIRMED",
)
INCROPERA = Source("INCROPERA", "Fundamentals of Heat and Mass Transfer, ch. 5", "Incropera et al.", "2007", "MEMORY")
ASHRAE_PSYCHROMETRICS = Source(
    "ASHRAE_PSYCHROMETRICS",
    "ASHRAE Handbook - Fundamentals, ch. 1, eqs 5 and 6 (saturation pressure)",
    "ASHRAE",
    "2017",
    "MEMORY",
)
KERTH_BRISKET = Source(
    "KERTH_BRISKET",
    "Smoked whole briskets: yield by end temperature and hold",
    "Kerth et al., Meat and Muscle Biology, article 18269",
    "2024",
    "CONFIRMED",
)
TAMU_BRISKET = Source("TAMU_BRISKET", "Barbecue pages, stall demonstration", "Texas A&M Meat Science", "-", "CONFIRMED")
GOMEZ_2015 = Source(
    "GOMEZ_2015",
    "Sodium nitrite diffusion in pork salted with solid nitrite",
    "Gomez et al., J. Food Eng. 149:188-194",
    "2015",
    "CONFIRMED",
)
GOMEZ_2017 = Source(
    "GOMEZ_2017",
    "Nitrate diffusion in pork, across and along the fibre",
    "Gomez et al., J. Food Eng. 214:69-78",
    "2017",
    "CONFIRMED",
)
KIRK_IONS = Source(
    "KIRK_IONS",
    "The Biogeochemistry of Submerged Soils, table 2.3 (ions in free water)",
    "Kirk, Wiley",
    "2004",
    "CONFIRMED",
)
POL_FOOD_1998 = Source(
    "POL_FOOD_1998", "NaCl diffusivity in beef", "Pol. J. Food Nutr. Sci. 48:59-66", "1998", "CONFIRMED"
)
ATOMIC_WEIGHTS = Source("ATOMIC_WEIGHTS", "Standard atomic weights", "IUPAC", "2021", "MEMORY")
SALOMETER = Source("SALOMETER", "Salometer scale: 26.395 % salt at 60 °F is 100 degrees", "CFIA", "-", "CONFIRMED")
FARM_BULLETIN = Source(
    "FARM_BULLETIN",
    "Pork Slaughtering, Cutting, Preserving and Cooking on the Farm",
    "USDA Farmers' Bulletin (number from memory: 2265)",
    "-",
    "CONFIRMED",
)
VIRGINIA_458_223 = Source(
    "VIRGINIA_458_223", "Dry curing Virginia-style ham", "Virginia Coop. Extension 458-223", "-", "MEMORY"
)
EXTENSION_LEAFLETS = Source(
    "EXTENSION_LEAFLETS", "Days per inch in home-curing leaflets", "several extension services", "-", "MEMORY"
)
NRC_COLOUR = Source(
    "NRC_COLOUR", "The Health Effects of Nitrate, Nitrite and N-Nitroso Compounds", "NRC", "1981", "CONFIRMED"
)


PROPANE_HEAT = Source(
    "PROPANE_HEAT", "Lower heating value of propane, 46.3 MJ/kg", "thermochemical tables, from memory", "-", "MEMORY"
)
PELLET_HEAT = Source(
    "PELLET_HEAT", "Wood pellets of class A1: net heating value of 16.5 MJ/kg or more", "ISO 17225-2", "2021", "MEMORY"
)
CHARCOAL_HEAT = Source(
    "CHARCOAL_HEAT",
    "Heating value of charcoal, 27 to 33 MJ/kg (energy statistics; bioenergy stove measurements)",
    "IEA / OLADE; stoves.bioenergylists.org",
    "-",
    "CONFIRMED",
)

CCR_3_910 = Source("CCR_3_910", "3 CCR 910.15, cooling of cooked products", "California Code", "-", "CONFIRMED")
FOOD_CODE_COOKING = Source(
    "FOOD_CODE_COOKING", "FDA Food Code, cooking and reheating", "US FDA, 3-401.11, 3-403.11", "2022", "CONFIRMED"
)
CFR_9_318_10 = Source(
    "CFR_9_318_10",
    "9 CFR 318.10(c)(1), trichinae in pork (removed 2018: science, no longer law)",
    "US Code of Federal Regulations",
    "2018",
    "CONFIRMED",
)
CFR_9_318_10_FREEZING = Source(
    "CFR_9_318_10_FREEZING",
    "9 CFR 318.10(c)(2), freezing of pork against trichinae (removed 2018)",
    "US Code of Federal Regulations",
    "2018",
    "MEMORY",
)
FSIS_MOLDS = Source("FSIS_MOLDS", "Molds on Food: Are They Dangerous?", "USDA FSIS", "2013", "MEMORY")
MCMINN_2018 = Source(
    "MCMINN_2018",
    "Appendix A tables against Salmonella and Listeria in beef, turkey and ham",
    "McMinn et al., Meat and Muscle Biology, article 9048",
    "2018",
    "CONFIRMED",
)
POWER_OUTAGE = Source("POWER_OUTAGE", "Food Safety During Power Outage", "FoodSafety.gov", "-", "CONFIRMED")
USDA_CANNING = Source(
    "USDA_CANNING", "Complete Guide to Home Canning, guide 5", "USDA NIFA, Bulletin 539", "2015", "MEMORY"
)
CDC_LISTERIA = Source("CDC_LISTERIA", "Tips for preventing Listeria food poisoning", "US CDC", "2014", "CONFIRMED")
CDC_BOTULISM = Source("CDC_BOTULISM", "Botulism: prevention, signs, honey and infants", "US CDC", "2024", "MEMORY")
FSA_FITNESS = Source("FSA_FITNESS", "Food handlers: fitness to work (48 h after illness)", "UK FSA", "2009", "MEMORY")
IARC_114 = Source("IARC_114", "Monographs 114: red meat and processed meat", "IARC, WHO", "2018", "MEMORY")
CDC_NITRITE = Source(
    "CDC_NITRITE", "Methemoglobinemia following nitrite in a household meal", "US CDC, MMWR 51(29)", "2002", "CONFIRMED"
)
CPSC_CHARCOAL = Source("CPSC_CHARCOAL", "Carbon monoxide from charcoal indoors", "US CPSC", "-", "CONFIRMED")
HOT_SMOKED_FISH = Source(
    "HOT_SMOKED_FISH",
    "Smoking fish at home (PNW 238) and Preservation Tips",
    "WSU, OSU and UI extension",
    "2003",
    "CONFIRMED",
)
NCHFP_CURING = Source(
    "NCHFP_CURING",
    "Curing and smoking meats for home food preservation: review and critical control points",
    "National Center for Home Food Preservation",
    "2002",
    "CONFIRMED",
)
FSIS_WASHING = Source("FSIS_WASHING", "Washing Food: Does It Promote Food Safety?", "USDA FSIS", "-", "MEMORY")
FSIS_SMOKING = Source("FSIS_SMOKING", "Smoking Meat and Poultry", "USDA FSIS", "-", "CONFIRMED")
FOOD_CODE_VARIANCE = Source(
    "FOOD_CODE_VARIANCE",
    "FDA Food Code, variance for curing and smoking food for sale",
    "US FDA, 3-502.11",
    "2022",
    "MEMORY",
)
SMALL_PLANT_STORAGE = Source(
    "SMALL_PLANT_STORAGE",
    "Cold storage of raw or cooked meat and poultry up to 44.6 °F",
    "University of Wisconsin, small-plant support, by Tompkin",
    "1996",
    "CONFIRMED",
)
STAPH_TOXIN = Source(
    "STAPH_TOXIN", "Toxins and spores survive cooking again", "general food microbiology", "-", "MEMORY"
)
USDA_THAWING = Source(
    "USDA_THAWING", "Safe thawing: turkey thawing times and E3259", "USDA; MSU Extension", "2022", "CONFIRMED"
)
USDA_YIELDS = Source(
    "USDA_YIELDS", "Table of Cooking Yields for Meat and Poultry, row 13806 (braised flat)", "USDA", "2012", "CONFIRMED"
)
BISHOP_2001 = Source(
    "BISHOP_2001",
    "Adaptive sampling with the ensemble transform Kalman filter",
    "Bishop, Etherton and Majumdar, Monthly Weather Review 129:420-436",
    "2001",
    "MEMORY",
)
EMERICK_2013 = Source(
    "EMERICK_2013",
    "Ensemble smoother with multiple data assimilation",
    "Emerick and Reynolds, Computers & Geosciences 55:3-15",
    "2013",
    "MEMORY",
)


def every_source() -> dict[str, Source]:
    """Every source by its key."""
    named = globals() | vars(fish_sources)
    return {key: value for key, value in named.items() if isinstance(value, Source)}
