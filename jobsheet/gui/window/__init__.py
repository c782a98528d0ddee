"""The window: menus and actions, the bench on which the panels lie, the title cells, and who hears what. Only
`start` and tests may import it. Begin with `window.py`.
"""
