# The closing prompt in a group is everyone's: a tap starts the tapper's own dialogue and leaves it standing.
@after mist

Ana in Team: /start
  This chat is now The Copper Gull's own:
  reminders for the team come here.
  Here, start with a slash or answer one of my
  messages: I read nothing else.
Ana: team invite
  Send this to your new member:
  join ‹code›
  Good for 1 person until Wed, 2 Dec 18:00. Only
  you can see it.
Ben: join ‹code›
  Welcome to The Copper Gull.
  You can scale, make batches and log waste
  here.
  [Log waste] [Batches]
  [Scale] [Cost] [Week]
  [Help]
Ben: language español
  Desde ahora hablo español contigo.
  Para los chats de todo el bar: bar idioma
  español
  [Anotar merma] [Lotes]
  [Escalar] [Coste] [Semana]
  [Ayuda]
@clock 2026-11-26 04:30 Europe/Lisbon
@reminders
  (to Team)
  Closing The Copper Gull, Wed, 25 Nov: what was
  thrown out?
  Type it, such as: 6 oranges mouldy, 2 limes.
  Or tap.
  [Log waste] [Nothing tonight]
  [In half an hour] [At noon]
Ben in Team taps [Log waste]
  ¿Qué se ha tirado?
  [grapefruit] [naranja]
  [limón] [lima]
  [Cancelar]
Ana in Team taps [Cancelar]
  (toast)
  That is Ben’s question.
Ben in Team taps [Cancelar]
  (edited)
  Cancelado. No se ha anotado nada.
Ana in Team taps [Log waste]
  What was thrown out?
  [grapefruit] [orange]
  [lemon] [lime]
  [Cancel]
Ana in Team taps [orange]
  (edited)
  How many oranges?
  [1] [2] [3]
  [4] [5] [6]
  [8] [10] [12]
  [Other number]
  [Back] [Cancel]
Ben in Team taps [3]
  (toast)
  Esa pregunta es de Ana.
Ana in Team taps [3]
  (edited)
  Why?
  [mouldy] [dried out]
  [peeled and not used] [over-prepped]
  [damaged on delivery] [other]
  [Back] [Cancel]
Ana in Team taps [mouldy]
  (edited)
  Logged: 3 oranges, mouldy.
  No price for orange: not in the cost.
  [Undo] [More waste]
  [Price of orange]
Ben in Team taps [Nothing tonight]
  (edited)
  Noted: no waste tonight.
  [Undo]
Ana in Team: /nothing tonight
  That was already done.
