"""Rules for designing a spray: from wishes and what is on the shelf to shares of each ingredient."""
