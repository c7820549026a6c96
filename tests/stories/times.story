# Days and hours as people say them, who closes, and reminders and notes by what they are about.
@after opening

Ana: remind me tomorrow at noon to call
  I will remind you Thu, 26 Nov 12:00: call
  [Other time] [Undo]
Ana: remind me on friday at half past nine to order
  I will remind you Fri, 27 Nov 09:30: order
  [Fri, 27 Nov 21:30]
  [Other time] [Undo]
Ana: remind me thursday next week to pay
  I will remind you Thu, 3 Dec 16:00: pay
  [Other time] [Undo]
Ana: remind me tomorrow at midnight to lock up
  I will remind you Fri, 27 Nov 00:00: lock up
  [Other time] [Undo]
Ana: remind me at 9 to call the baker
  I will remind you Wed, 25 Nov 21:00: call the
  baker
  [Thu, 26 Nov 09:00]
  [Other time] [Undo]
Ana: remind me every monday at 10 to count
  I will remind you every Mon 10:00: count
  [Other time] [Undo]
Ana: remind me tonight to lock up
  I will remind you Wed, 25 Nov 20:00: lock up
  [Other time] [Undo]
@clock 2026-11-25 23:30 Europe/Lisbon
Ana: remind me tonight to lock up
  When?
  [In an hour] [In 3 hours]
  [Tomorrow 16:00] [Every Monday 15:00]
  [Back] [Cancel]
Ana: 1
  I will remind you Thu, 26 Nov 01:00: lock up
  [Other time] [Undo]
Ana: sorry, 2am
  Moved to Thu, 26 Nov 02:00: lock up
  [All reminders] [Undo]
# Who closes.
Ana: I'm closing up tonight
  Ana closes tonight.
  I ask at closing what was thrown out.
  [Today] [Undo]
Ana: closes tomorrow
  I note who closes tonight, such as: closes Ben
Ana: Marta closes tonight
  Read as: closes Marta
  Nothing is logged yet. Tap if that is right.
  [closes Marta]
Ana: who closes tonight?
  Ana closes tonight.
  [Today]
# What is planned, by what it is about: shown with its taps, never a new one.
Ana: cancel the reminder about paying
  Thu, 3 Dec 16:00: pay
  For Ana.
  [Other time] [Stop it] [All reminders]
Ana: stop the baker reminder
  Wed, 25 Nov 21:00: call the baker
  For Ana.
  [Other time] [Stop it] [All reminders]
Ana: delete the last reminder
  9 reminders planned
  Wed, 25 Nov 20:00: lock up
  Wed, 25 Nov 21:00: call the baker
  Thu, 26 Nov 02:00: lock up
  Thu, 26 Nov 04:30: what was thrown out tonight
  Thu, 26 Nov 12:00: call
  Fri, 27 Nov 00:00: lock up
  Fri, 27 Nov 09:30: order
  every Mon 10:00: count
  and 1 more
  Tap one to change or stop it.
  [lock up] [call the baker]
  [lock up] [what was thrown out tonight]
  [call] [lock up]
  [order] [count]
  [Add one]
# Notes.
Ana: note: the ice machine is loud
  Noted for Wed, 25 Nov: the ice machine is loud
  It shows under today until somebody ticks it.
  [Today] [Undo]
Ana: sorry, buy straws
  Read as: correct buy straws
  Nothing is logged yet. Tap if that is right.
  [correct buy straws]
Ana: note for friday: dj arrives at 8
  Noted for Fri, 27 Nov: dj arrives at 8
  It shows under today until somebody ticks it.
  [Today] [Undo]
Ana: the dj note is done
  Is it done? Then tick it off.
  note for Fri, 27 Nov: dj arrives at 8
  [✓ dj arrives at 8]
  [Leave a note]
Ana: notes
  2 notes are open
  note for Wed, 25 Nov: the ice machine is loud
  note for Fri, 27 Nov: dj arrives at 8
  [✓ the ice machine is loud]
  [✓ dj arrives at 8]
  [Leave a note]
# The end of the shift.
Ana: end of shift
  Closing The Copper Gull, Wed, 25 Nov: what was
  thrown out?
  Ana closes tonight.
  [Log waste] [Nothing tonight]
  [Leave a note] [Today]
Ana: event party 80 guests saturday 5 december
  How many drinks for each guest?
  [1] [2] [3]
  [Back] [Cancel]
Ana: cancel
  Cancelled. Nothing was logged.
Ana: cancel event on saturday 5 december
  No event is planned on Sat, 5 Dec.
  [Events]
# A time first, 'next week', a day by its number, and a time that corrects nothing else.
Ana: tonight at 4 remind me to air the fridge
  I will remind you Thu, 26 Nov 04:00: air the
  fridge
  [Other time] [Undo]
Ana: remind me next week to pay the ice
  I will remind you Mon, 30 Nov 16:00: pay the
  ice
  [Other time] [Undo]
Ana: remind me on the 5th to pay
  I will remind you Sat, 5 Dec 16:00: pay
  [Other time] [Undo]
Ana: cancel that reminder
  Sat, 5 Dec 16:00: pay
  For Ana.
  [Other time] [Stop it] [All reminders]
Ana: move the fridge reminder to 3
  Thu, 26 Nov 04:00: air the fridge
  For Ana.
  [Other time] [Stop it] [All reminders]
Ana: note call the baker
  Noted for Wed, 25 Nov: call the baker
  It shows under today until somebody ticks it.
  [Today] [Undo]
Ana: sorry 9
  Read as: correct 9
  Nothing is logged yet. Tap if that is right.
  [correct 9]
Ana: mark the baker note as done
  Is it done? Then tick it off.
  note for Wed, 25 Nov: call the baker
  [✓ call the baker]
  [Leave a note]
