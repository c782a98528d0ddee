"""How rules see a plan: faces, chains of holes, cuts, words; nothing here remarks. What is asked by one
rule alone stands in that rule. Begin in `faces.py`.
"""
