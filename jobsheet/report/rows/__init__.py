"""What stands in the row of a step on paper. Figures and verdicts come ready from below; nothing is reckoned
here. Begin in `step_rows.py`.
"""
