"""What rules mend a plan with."""
