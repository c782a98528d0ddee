"""What can be done to a piece of work: one kind a file in `kinds/`, what they share in `shared/`. A kind
says what a step asks and leaves; whether a machine carries it is asked in `limits/`, whether it is wise in
`review/`. Begin in `kind.py`.
"""
