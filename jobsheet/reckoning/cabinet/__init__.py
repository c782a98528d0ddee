"""What a job needs of the workshop's own tools, and what is picked from them. The drawers themselves are
read in `storage/`. Begin in `cabinet_needs.py`.
"""
