"""How the work is held: one kind of holding a file in `kinds/`, found by walking it.

Begin with `holding_kind.py` (what a kind says of itself), `holding_roles.py` (what it is to rules, limits and
drawings, none of which know its name) and `all_holdings.py`. A kind is a struct of facts, a form, words,
bodies and a grip; `model/held_work.py` has what they share.
"""
