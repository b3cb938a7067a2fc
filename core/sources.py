"""The bibliography: one Source for each paper, table, rule or custom that the code or the bot cites.

`status` is CONFIRMED where the figure was read in the publisher's text or another body's copy of it,
MEMORY where it is recalled and not seen, PRACTICE for common practice without a source, DERIVED for
arithmetic of our own, TUNED for a value chosen so that a stated case is reproduced. docs/sources.md
lists the same; a test holds the two equal.
"""

from dataclasses import dataclass
from typing import Literal

Status = Literal["CONFIRMED", "MEMORY", "PRACTICE", "DERIVED", "TUNED"]


@dataclass(frozen=True)
class Source:
    """Where a figure or a rule comes from."""

    key: str
    title: str
    where: str
    year: str
    status: Status


FSIS_COOKING_2021 = Source(
    "FSIS_COOKING_2021",
    "FSIS Cooking Guideline for Meat and Poultry Products (Revised Appendix A)",
    "USDA FSIS, Tables 2, 3, 4 and 6",
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
    "HANSEN_2008",
    "MRI of salting pork",
    "Hansen et al., Meat Science 80:851-856",
    "2008",
    "CONFIRMED",
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


def every_source() -> dict[str, Source]:
    """Every source by its key."""
    return {key: value for key, value in globals().items() if isinstance(value, Source)}
