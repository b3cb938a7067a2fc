"""From a line as it was typed to the plain words that the readers know; `normal` calls these, and no reader does more.

Foreign words (`tongue`), hours and weights of the Continent, slips of a thumb, then how people talk into a phone
(`plainer`, whose rules lie here by their subject), numbers in words, second thoughts, and a comma where one is missing.
A rule that looks at the start of a line holds for the start of a clause too (`clause.clause`). None makes or drops a
number that a reader would take for a temperature or a dose. No reader is imported here.
"""
