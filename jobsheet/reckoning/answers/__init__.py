"""What the machine answers about a step or a kind of cut: speeds, mends, deepest pass, largest drill. Each
answers one question in a value that window, paper and shell show. Begin in `all_answers.py`.
"""
