"""What rules mend a plan with. A fix is offered only where it was tried; no rule is known here. Begin in
`fixes.py`, then `fix_tried.py`.
"""
