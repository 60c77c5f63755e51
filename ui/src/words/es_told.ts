// What the replies say, in Spanish: the names of things, then sentences by the place that shows them.
import { teller } from './told';

const NAMES = {
  'leg {#}': 'lado {}',
  'tie {#}': 'diagonal {}',
  'face {#}': 'agua {}',
  'ridge {#}': 'cumbrera {}',
  'hip {#}': 'limatesa {}',
  'valley {#}': 'limahoya {}',
  'pipe {#}': 'tubo {}',
  'mast {#}': 'mástil {}',
  'flue {#}': 'chimenea de metal {}',
  'chimney {#}': 'chimenea {}',
  'skylight {#}': 'tragaluz {}',
  'box vent {#}': 'ventila de caja {}',
  'fan {#}': 'extractor {}',
  'dish {#}': 'antena {}',
  'solar {#}': 'paneles solares {}',
  'other {#}': 'otra cosa {}',
  'photo {#}': 'foto {}',
  'change {#}': 'cambio {}',
  pipe: 'tubo',
  mast: 'mástil',
  flue: 'chimenea de metal',
  chimney: 'chimenea',
  skylight: 'tragaluz',
  'box vent': 'ventila de caja',
  fan: 'extractor',
  dish: 'antena',
  solar: 'paneles solares',
  other: 'otra cosa',
  ft: 'pies',
  in: 'pulg',
  size: 'medida',
  width: 'ancho',
  depth: 'fondo',
  height: 'alto',
  'width {}': 'ancho {}',
  'depth {}': 'fondo {}',
  'height {}': 'alto {}',
  '± {} squares': '± {} cuadros',
  '{} squares': '{} cuadros',
  '{} layers': '{} capas',
  '1 layer': '1 capa',
  'strip shingle': 'teja de tira',
  gap: 'separación',
  'plank width': 'ancho de tabla',
  thickness: 'grueso',
  plank: 'tabla',
  sheet: 'hoja',
  deck: 'base',
  'the deck': 'la base',
  layers: 'capas',
  'eave height': 'alto del alero',
  'ridge height': 'alto de la cumbrera',
  'a slope': 'un agua',
  'a gable': 'un gablete',
  '1 face': '1 agua',
  '{} faces': '{} aguas',
  'what was seen over this leg': 'lo visto sobre este lado',
  'faces seen over this leg': 'aguas vistas sobre este lado',
  'the ridge over the eaves': 'la cumbrera sobre el alero',
  'read its height': 'leer su alto',
  'roof as seen': 'el techo como se vio',
  '{} was seen as a gable, as it is drawn.': '{} se vio como gablete, como está dibujado.',
  '{} was seen as a slope, as it is drawn.': '{} se vio como agua, como está dibujado.',
  '{} was seen as a gable and is drawn as a slope: {}':
    '{} se vio como gablete y está dibujado como agua: {}',
  '{} was seen as a slope and is drawn as an end: {}':
    '{} se vio como agua y está dibujado como extremo: {}',
  '{} was seen over {}, as drawn.': '{} se vio sobre {}, como está dibujado.',
  '{} were seen over {}, as drawn.': '{} se vieron sobre {}, como está dibujado.',
  'overhang, leg {}': 'vuelo, lado {}',
  '{} pitch': 'pendiente, {}',
  '{} gable': 'gablete, {}',
  'device {}': 'aparato {}',
  '{} or {} side?': '¿{} o {}?',
  '{} side?': '¿{}?',
  '{} side': '{}',
  'Which side?': '¿Qué lado?',
  front: 'frente',
  right: 'derecha',
  back: 'atrás',
  left: 'izquierda',
  'front {#}': 'frente {}',
  'right {#}': 'derecha {}',
  'back {#}': 'atrás {}',
  'left {#}': 'izquierda {}',
  roof: 'techo',
  under: 'debajo',
  ground: 'suelo',
  'this phone': 'este teléfono',
  'roof area': 'área del techo',
  squares: 'cuadros',
  'area in plan': 'área en planta',
  eave: 'alero',
  rake: 'orilla inclinada',
  ridge: 'cumbrera',
  hip: 'limatesa',
  valley: 'limahoya',
};

const SEEN = {
  vents: 'ventilas',
  gutters: 'canalones',
  'solar panels': 'paneles solares',
  'bin place': 'lugar para el contenedor',
  driveway: 'entrada de carros',
  attic: 'ático',
  'walk round': 'dar la vuelta',
  photograph: 'tomar fotos',
  climb: 'subir',
  'lift an edge': 'levantar una orilla',
  'look into the attic': 'ver el ático',
  'ice, snow or wet': 'hielo, nieve o mojado',
  wind: 'viento',
  'wire to the house': 'cable a la casa',
  'high or steep': 'alto o empinado',
  'soft ground': 'suelo blando',
  'weak deck': 'base débil',
  'hidden skylights': 'tragaluces tapados',
  'bees or a dog': 'abejas o un perro',
  'alone here': 'solo aquí',
  'Nobody home: ground only': 'Nadie en casa: solo desde el suelo',
  'Driveway seen before work': 'Entrada de carros vista antes del trabajo',
  '{}: the whole side, corner to corner': '{}: todo el lado, de esquina a esquina',
  '{}: eave, wall and ground of a part': '{}: alero, pared y suelo de una parte',
  '{}: close, with the tape in the plane of the thing': '{}: cerca, la cinta junto a la cosa',
  '{}: all of it that shows from the ground': '{}: todo lo que se ve desde el suelo',
  '{}: a face, its edges and what stands in it': '{}: un agua, sus orillas y lo que lleva',
  '{}: the attic or the soffit from one end': '{}: el ático o el sofito desde una punta',
  '{}: a bay, with what holds the deck': '{}: un tramo, con lo que sostiene la base',
  '{}: the driveway as it is now': '{}: la entrada de carros como está ahora',
  '{}: where bin and delivery can stand, and wires':
    '{}: dónde caben contenedor y entrega, y los cables',
  'Room for about {} photos.': 'Lugar para unas {} fotos.',
  'Room for about {} photos only. Make room on this device, or a copy first.':
    'Lugar para unas {} fotos nada más. Haga lugar en este aparato, o primero una copia.',
};

const FRAME = {
  '1 copy: this phone only': '1 copia: solo este teléfono',
  '2 copies: this phone, hub': '2 copias: este teléfono y la central',
  'Waiting to send: {}, on this phone only': 'Por mandar: {}, solo en este teléfono',
  '{} booked.': '{}: anotado.',
  '{} struck.': '{}: tachado.',
  '{} taken back.': '{}: deshecho.',
  '{} stands again.': '{}: vale otra vez.',
  'Photo kept.': 'Foto guardada.',
  'Photo of {} kept.': 'Foto de {} guardada.',
  "{} can't be reached.": '{}: no se alcanza.',
  'At the {} after leg {}.': 'En la {} después del lado {}.',
  'outside corner': 'esquina de afuera',
  'inside corner': 'esquina de adentro',
  'angled corner': 'esquina en ángulo',
  'step straight on': 'derecho',
  'Next: read {} again.': 'Sigue: medir {} otra vez.',
  'Next: read {}.': 'Sigue: medir {}.',
  'Next: the corner after leg {}.': 'Sigue: la esquina después del lado {}.',
  'Next: look at the plan.': 'Sigue: ver el plano.',
  'Next: look at the photos.': 'Sigue: ver las fotos.',
  'Next: say who is here.': 'Sigue: decir quién está.',
  'Next: look at the papers.': 'Sigue: ver los papeles.',
  'Next: look at {}.': 'Sigue: ver {}.',
  '{} open, {} unproved': '{} abiertas, {} sin comprobar',
  '{} legs read.': '{} lados medidos.',
  '1 leg read.': '1 lado medido.',
};

const FIELD_BOOK = {
  'No leg is read yet.': 'Ningún lado está medido.',
  'Start at any outside corner.': 'Empiece en una esquina de afuera.',
  'Closes within {}.': 'Cierra dentro de {}.',
  'To close: {} along, {} across.': 'Para cerrar: {} a lo largo, {} a lo ancho.',
  'an unread length': 'un largo sin medir',
  'If this was the last leg, it is {} short along the front.':
    'Si este fue el último lado, faltan {} a lo largo del frente.',
  'If this was the last leg, it is {} long along the front.':
    'Si este fue el último lado, sobran {} a lo largo del frente.',
  'If this was the last leg, it is {} short across the front.':
    'Si este fue el último lado, faltan {} a lo ancho.',
  'If this was the last leg, it is {} long across the front.':
    'Si este fue el último lado, sobran {} a lo ancho.',
  '{} short along the front.': 'Faltan {} a lo largo del frente.',
  '{} long along the front.': 'Sobran {} a lo largo del frente.',
  '{} short across the front.': 'Faltan {} a lo ancho.',
  '{} long across the front.': 'Sobran {} a lo ancho.',
  'Not checked: a leg is worked out from the others.':
    'Sin revisar: un lado se calculó de los otros.',
  'Look again at {} or {}.': 'Mire otra vez {} o {}.',
  'Look again at {}.': 'Mire otra vez {}.',
  'Nobody said how the line turns after leg {}. Tap that corner.':
    'Nadie dijo cómo da vuelta después del lado {}. Toque esa esquina.',
  '{} is being read again.': '{} se está midiendo otra vez.',
  'Swapped digits?': '¿Números volteados?',
  'A ten more or less?': '¿Diez de más o de menos?',
  'A foot more or less?': '¿Un pie de más o de menos?',
  'Tenths taken for inches?': '¿Décimos tomados por pulgadas?',
  'An overhang left out?': '¿Se olvidó un vuelo?',
  'The tape read from its other end?': '¿La cinta leída desde la otra punta?',
  'Something else?': '¿Otra cosa?',
  'If so, it would have been {}.': 'Entonces habría sido {}.',
  'The readings of {} differ: {} and {}. Read it a third time from the tape.':
    'Las medidas de {} no coinciden: {} y {}. Mida una tercera vez con la cinta.',
  'not read': 'sin medir',
  'read once': 'medido una vez',
  'read twice': 'medido dos veces',
  'read {} times': 'medido {} veces',
  'nothing checks it': 'nada lo comprueba',
  'the readings differ': 'las medidas no coinciden',
  "can't be reached": 'no se alcanza',
  'meets leg {} at an {}': 'topa con el lado {} en una {}',
  'runs straight on into leg {}': 'sigue derecho al lado {}',
  'taped along the eave edge': 'con cinta por la orilla del alero',
  'struck {}': 'tachado {}',
  'read back right': 'leído y correcto',
  'without sight of an earlier value': 'sin ver lo medido antes',
  '{} what? Press ft.': '¿{} qué? Toque pies.',
  '{} in is over a foot. Did you read {} ft {} in?':
    '{} pulg pasan de un pie. ¿Leyó {} pies {} pulg?',
  '{} ft is longer than a tape. Did you read {} ft?':
    '{} pies es más que una cinta. ¿Leyó {} pies?',
  'ft stands already. The rest of the length comes now.': 'Ya están los pies. Ahora va lo demás.',
  'Nothing is typed yet. Type what the tape says.':
    'No hay nada escrito. Escriba lo que dice la cinta.',
  '0 is no length. Take it back and type what the tape says.':
    '0 no es un largo. Quítelo y escriba lo que dice la cinta.',
  'two {}s?': '¿dos veces {}?',
};

const UNSEEN =
  'una unidad equivocada o cinta estirada en todas las medidas, un vuelo olvidado en toda la vuelta, ni paredes fuera de escuadra.';
const UNSEEN_EN =
  'one wrong unit or a stretched tape on every reading, an overhang left out all round or walls out of square.';

const PLAN = {
  [`It would not show the same slip on both legs of a pair (legs {} and {}, {} and {} or others), ${UNSEEN_EN}`]: `No se notaría el mismo error en los dos lados de un par (lados {} y {}, {} y {} u otros), ${UNSEEN}`,
  [`It would not show the same slip on both legs of a pair (legs {} and {}, or {} and {}), ${UNSEEN_EN}`]: `No se notaría el mismo error en los dos lados de un par (lados {} y {}, o {} y {}), ${UNSEEN}`,
  [`It would not show the same slip on both legs of a pair (legs {} and {}), ${UNSEEN_EN}`]: `No se notaría el mismo error en los dos lados de un par (lados {} y {}), ${UNSEEN}`,
  [`It would not show the same slip on every reading of a pair, ${UNSEEN_EN}`]: `No se notaría el mismo error en cada medida de un par, ${UNSEEN}`,
  '{}: {} as drawn, but readings as likely make it {}. The roof is near another shape: order for the longer, or read the legs there again.':
    '{}: {} como está dibujado, pero con medidas igual de probables serían {}. El techo está cerca de otra forma: pida para el más largo, o mida otra vez los lados de ahí.',
  'A leg is worked out from the others, so the outline is not checked. Read that leg, or a tie.':
    'Un lado se calculó de los otros, así que el contorno no está revisado. Mida ese lado, o una diagonal.',
  'The gable at leg {} stands at an inside corner. Look whether two roofs meet there.':
    'El gablete del lado {} está en una esquina de adentro. Vea si ahí se juntan dos techos.',
  'No roof yet. Walk round the house and read its legs.':
    'Todavía no hay techo. Dé la vuelta a la casa y mida sus lados.',
  'No roof yet: nothing says how long leg {} is. Read it, or a tie across it.':
    'Todavía no hay techo: nada dice cuánto mide el lado {}. Mídalo, o una diagonal.',
  '{} in 12, near {} in 12': '{} en 12, cerca de {} en 12',
  '{} and {}: both ways read the same.': '{} y {}: de los dos lados lee igual.',
  '{} and {}: this phone reads {} high, and the mean is free of it.':
    '{} y {}: este teléfono lee {} de más, y el promedio ya no lo lleva.',
  '{} and {}: this phone reads {} low, and the mean is free of it.':
    '{} y {}: este teléfono lee {} de menos, y el promedio ya no lo lleva.',
  '± {}, from marks on one photo. A pitch from marks on one photo is good to a quarter inch in 12 at best: boards, gutters and the lens are not in it. Read it on the roof or with a level and tape before you order.':
    '± {}, de marcas en una foto. Una pendiente así vale cuando mucho a un cuarto de pulgada en 12: tablas, canalones y lente no cuentan. Mídala en el techo o con nivel y cinta antes de pedir.',
  '{} in 12': '{} en 12',
  'Hold it still.': 'Téngalo quieto.',
  'It moves. Hold it still, or Capture the mean.': 'Se mueve. Téngalo quieto, o tome el promedio.',
  'Still.': 'Quieto.',
  'Exactly 0° all the time: this sensor does not feel the tilt. Read it by level and tape.':
    '0° exactos todo el tiempo: este sensor no siente la inclinación. Mídala con nivel y cinta.',
  'This phone does not report its tilt. Read the pitch by level and tape, or record it as not got.':
    'Este teléfono no da la inclinación. Mida con nivel y cinta, o diga que no se pudo.',
  'Which end of this face is a gable? Say so at that face first: its leg is the width of what is marked.':
    '¿Qué lado de esta agua es un gablete? Dígalo primero en ese lado: es el ancho de lo que se marca.',
  'Leg {} under this gable has no length yet. Read it first.':
    'El lado {} bajo este gablete no tiene largo. Mídalo primero.',
  '{} eave corners and {} ridge ends are marked: mark at least two eave corners and one ridge end or gable top.':
    'Marcadas: {} esquinas de alero y {} puntas. Marque al menos dos esquinas de alero y una punta.',
  "The marks leave the pitch open by more than 1 in 12: mark the ground under the corners or a third eave corner, or take the photo from off a corner with the phone's vertical.":
    'Con esas marcas la pendiente queda abierta por más de 1 en 12: marque el suelo bajo las esquinas, o tome la foto desde una esquina.',
  'This file is no photo': 'Este archivo no es una foto',
};

const CHECK = {
  closure: 'cierre',
  pitches: 'pendientes',
  sizes: 'medidas',
  sides: 'lados',
  permissions: 'permisos',
  promise: 'promesa',
  copies: 'copias',
  'No photo shows: {}.': 'Ninguna foto muestra: {}.',
  'Nobody looked at the driveway before the work.':
    'Nadie vio la entrada de carros antes del trabajo.',
  'Nobody is noted to have allowed: {}.': 'No está anotado quién dejó: {}.',
  'Nobody noted what was promised, or that nothing was.':
    'Nadie anotó qué se prometió, o que no fue nada.',
  '{}. A second one outlives a lost phone.': '{}. Con otra no importa perder el teléfono.',
  '{}: nobody looked': '{}: sin ver',
  '{}: read once': '{}: medida una vez',
  'Seen at 0 places: neither deck nor layers. Both are priced as a wide guess.':
    'Vista en 0 lugares: ni base ni capas. Las dos se cotizan a bulto.',
  'No photo is kept yet. One of each side answers most questions later.':
    'Todavía no hay foto. Una de cada lado contesta luego casi todo.',
  'No photo shows the {} side.': 'Ninguna foto muestra el lado {}.',
  '{} is read once and nothing checks it.': '{} está medido una vez y nada lo comprueba.',
  'Read once more, the roof would be known to ± {} sq ft instead of ± {}.':
    'Midiéndolo otra vez, el techo se sabría a ± {} pies² en vez de ± {}.',
  '{}: no photo is said to be {}.': '{}: ninguna foto está dicha como {}.',
  whole: 'completa',
  middle: 'media',
  'close with tape': 'cerca, con cinta',
  '{} is not read.': '{} está sin medir.',
  '{}: nobody looked at its pitch.': '{}: nadie vio su pendiente.',
  '{}: its pitch is read once and nothing checks it.':
    '{}: su pendiente está medida una vez y nada la comprueba.',
};

const JOB_FILE = {
  owner: 'dueño',
  crew: 'cuadrilla',
  firm: 'compañía',
  supplier: 'proveedor',
  'permit office': 'oficina de permisos',
  '{}, version {}': '{}, versión {}',
  'Nothing sent yet.': 'No se ha mandado nada.',
  'Waiting to send: {}': 'Por mandar: {}',
  'Waiting to send since {}.': 'Por mandar desde {}.',
  'Handed on {}.': 'Entregado {}.',
  'Not sent: taken back {}.': 'No se mandó: se quitó {}.',
  'Nothing waits. Handed on: {}.': 'Nada espera. Entregados: {}.',
  'There is no packet to send yet. Make one first.': 'No hay paquete que mandar. Haga uno primero.',
  'To whom? Write a name or an address, then Send.':
    '¿A quién? Escriba un nombre o una dirección, luego Mandar.',
  'Never cost, margin or the book.': 'Nunca costo, ganancia ni la libreta.',
  'Never money.': 'Nunca dinero.',
  'Never to be passed on.': 'No se pasa a nadie.',
  'Never our money, photos or readings.': 'Nunca dinero, fotos ni medidas.',
  'Never a price, photos or readings.': 'Nunca precio, fotos ni medidas.',
  'Proposal with its price, photo sheets, the story of every figure, plan and tables.':
    'Propuesta con su precio, hojas de fotos, el historial de cada cifra, plano y tablas.',
  'Crew sheet in English and Spanish, photos, plan and order.':
    'Hoja de cuadrilla en inglés y español, fotos, plano y pedido.',
  'Everything: every paper, cost and margin, the book and the photos as taken.':
    'Todo: cada papel, costo y ganancia, la libreta y las fotos como se tomaron.',
  'Order list in the units that are sold, and the plan.':
    'Lista de pedido en las unidades que se venden, y el plano.',
  'Permit sheet with scope, areas, layers and code notes, plan and tables.':
    'Hoja de permiso con alcance, áreas, capas y notas de código, plano y tablas.',
  '{} open': '{} abiertas',
};

const BY_HAND = {
  '{} entries': '{} apuntes',
  '1 entry': '1 apunte',
  '{} photos': '{} fotos',
  '1 photo': '1 foto',
  '{} packets': '{} paquetes',
  '1 packet': '1 paquete',
  '{} jobs: {}; and others': '{} trabajos: {}; y otros',
  '{} jobs: {}': '{} trabajos: {}',
  'Nothing new: {} of {} were here already.': 'Nada nuevo: {} de {} ya estaban aquí.',
  'Brought in: {} of {}. {} were here already.': 'Llegaron: {} de {}. {} ya estaban aquí.',
  'Brought in: {} of {}.': 'Llegaron: {} de {}.',
  'That book is empty: nothing came.': 'Esa libreta está vacía: no llegó nada.',
  '{} entries have an id that is taken: both are kept, look at them':
    '{} apuntes llevan un número ya ocupado: quedan los dos, véalos',
  '1 entry has an id that is taken: both are kept, look at them':
    '1 apunte lleva un número ya ocupado: quedan los dos, véalos',
  '{} were here already.': '{} ya estaban aquí.',
  '{} holds {}, {}, {}. {} photos were not on the disk and in no copy of it. It is a second copy once it lies on another machine.':
    '{} lleva {}, {}, {}. {} fotos no estaban en el disco y no van en la copia. Será otra copia cuando esté en otra máquina.',
  '{} holds {}, {}, {}. 1 photo was not on the disk and in no copy of it. It is a second copy once it lies on another machine.':
    '{} lleva {}, {}, {}. 1 foto no estaba en el disco y no va en la copia. Será otra copia cuando esté en otra máquina.',
  '{} holds {}, {}, {}. It is a second copy once it lies on another machine.':
    '{} lleva {}, {}, {}. Será otra copia cuando esté en otra máquina.',
  'This file is no whole backup ({}): nothing was restored; take another copy of it.':
    'Este archivo no es una copia entera ({}): no se trajo nada; tome otra copia de él.',
  'it does not begin as a backup does': 'no empieza como una copia',
  'its bytes are not those that were written': 'no es lo que se escribió',
  'Nothing was brought: {}.': 'No se trajo nada: {}.',
  'the packet is for "{}" and holds no entries: bring the firm\'s packet of that job':
    'el paquete es para "{}" y no lleva apuntes: traiga el paquete de la compañía de ese trabajo',
  'this is no packet, or one cut short ({}): get it again whole':
    'no es un paquete, o está cortado ({}): consígalo otra vez entero',
  '{} is not as it was packed: get the packet again':
    '{} no está como se empacó: consiga otra vez el paquete',
  'No square is found on this photo. Hold the camera straight before it, so near that it fills half the picture, and take it again; or type the line below the square.':
    'En esta foto no se halla el cuadro. Ponga la cámara de frente, tan cerca que llene media foto, y tómela otra vez; o escriba la línea de abajo del cuadro.',
  'The square on this photo is no link of a hub. Take the one that the other machine shows in its Settings, by Let one more device join.':
    'El cuadro de esta foto no es enlace de una central. Tome el que la otra máquina muestra en Ajustes, en Dejar que se una otro aparato.',
  'This picture cannot be looked at here. Take it again as a JPEG, or type the line below the square.':
    'Esta imagen no se puede ver aquí. Tómela otra vez en JPEG, o escriba la línea de abajo del cuadro.',
  'The file broke off on its way, and nothing was brought. Bring it in again.':
    'El archivo se cortó en el camino y no se trajo nada. Tráigalo otra vez.',
  'The disk that holds {} is full and nothing of this was kept: free some space, then do it again.':
    'El disco de {} está lleno y nada de esto se guardó: haga lugar y hágalo otra vez.',
};

export const told = teller(
  { ...NAMES, ...SEEN, ...FRAME, ...FIELD_BOOK, ...PLAN, ...CHECK, ...JOB_FILE, ...BY_HAND },
  { ft: 'pies', in: 'pulg', 'sq ft': 'pies²' },
  ' y ',
);
