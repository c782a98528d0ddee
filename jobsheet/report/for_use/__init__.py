"""Pages for one use: a route list to hand over, a card for one step, a blank form. Begin with `chosen_pages.py`."""
