"""The kitchen science of Saltbell: facts, rules and plans, without a word of chat in it."""
