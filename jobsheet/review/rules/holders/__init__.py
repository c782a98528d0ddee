"""Rules on ways of holding other than a vice or straps."""
