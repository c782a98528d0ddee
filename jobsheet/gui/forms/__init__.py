"""Fields, their boxes, the forms made of them, buttons, and questions to the person. They show entries and
report what was typed; they may not know a job or the desk. Begin with `form.py`.
"""
