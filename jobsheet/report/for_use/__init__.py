"""Pages for one use: a route list to hand over, a card for one step, a blank form. What they say comes from
the same rows as the job's own sheets. Begin with `chosen_pages.py`.
"""
