"""How rules see a plan: faces, chains of holes, cuts, words; nothing here remarks."""
