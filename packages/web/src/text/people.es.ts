/** Every string of signing in, joining and people in Spanish. */
import type { PeopleWords } from './people.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const peopleEs: PeopleWords = {
  roles: {
    coordinator: { name: 'coordinación', means: 'Lleva el programa: ve y cambia todo, e invita a las personas.' },
    scout: { name: 'monitoreo', means: 'Revisa trampas y anota lo que encuentra; ve todo el programa menos los precios.' },
    grower: { name: 'productor', means: 'Ve las parcelas de sus fincas y anota lo que se hace en ellas.' },
    reader: { name: 'lectura', means: 'Ve cómo va la temporada; ninguna parcela, finca ni lugar.' },
  },

  entry: {
    name: 'Nombre',
    nameHint: 'Como le conocen aquí. Con él entra usted.',
    password: 'Contraseña',
    newPassword: 'Contraseña que usted elija',
    passwordHint: (least) =>
      `Al menos ${least} caracteres, de cualquier clase, también espacios. Unas palabras que no tengan que ver entre sí se recuerdan bien; puede usar un gestor de contraseñas.`,
    show: 'Mostrar',
    hide: 'Ocultar',
    showLabel: 'Mostrar la contraseña',
    hideLabel: 'Ocultar la contraseña',
    language: 'Idioma',
    working: 'Un momento …',
  },

  faults: {
    name: {
      missing: 'Escriba un nombre.',
      'too-long': 'Ese nombre es demasiado largo: 80 caracteres como máximo.',
      'invisible-characters': 'Ese nombre tiene caracteres que no se ven. Escríbalo de nuevo.',
      'mixed-alphabets': 'Una palabra de ese nombre mezcla letras parecidas de dos alfabetos. Escríbalo de nuevo.',
      taken:
        'Alguien aquí ya tiene ese nombre. Añada un segundo nombre; si es usted, pida a la coordinación un enlace para una contraseña nueva.',
    },
    password: {
      missing: 'Escriba la contraseña.',
      'too-short': (least, got) =>
        `Lleva ${plural(got, 'carácter', 'caracteres')}: hacen falta ${least}. Añada una o dos palabras.`,
      'too-long': 'Pasa de 256 caracteres.',
      guessed: (parts, left, needed) =>
        `${parts}. Sin eso ${left === 1 ? 'queda' : 'quedan'} ${plural(left, 'carácter', 'caracteres')}, y hacen falta ${needed}: use palabras que no tengan que ver entre sí.`,
      why: {
        common: (part) => `«${part}» no cuenta, todo el mundo lo prueba`,
        context: (part) => `«${part}» no cuenta, es un nombre de aquí`,
        run: (part) => `«${part}» no cuenta, solo sigue la fila`,
        repeated: (part) => `«${part}» cuenta una vez, se repite`,
      },
      'easily-guessed': 'Está entre lo primero que cualquiera probaría. Use palabras que no tengan que ver entre sí.',
    },
    code: {
      missing: 'Escriba el código que mostró el servidor.',
      wrong: 'Ese no es el código. Cópielo de la terminal, o arranque otra vez el servidor para tener uno nuevo.',
    },
    farms: 'Elija al menos una finca para un productor.',
    wrong:
      'Ese nombre y esa contraseña no van juntos. Mírelos con «Mostrar», o pida a la coordinación un enlace para una contraseña nueva.',
    wait: (seconds) =>
      `Demasiados intentos. Pruebe de nuevo en ${seconds < 90 ? plural(seconds, 'segundo', 'segundos') : plural(Math.ceil(seconds / 60), 'minuto', 'minutos')}.`,
    unreachable: 'El servidor no responde. Lo escrito sigue aquí; pruebe de nuevo en un momento.',
    other: (said) => `El servidor no lo aceptó: ${said}`,
    lastCoordinator: 'La última persona de coordinación se queda en su papel. Dé antes ese papel a otra.',
  },

  signIn: {
    title: 'Entrar',
    lead: 'Este programa está abierto a las personas invitadas a él.',
    submit: 'Entrar',
    forgot: '¿Olvidó la contraseña? La coordinación puede hacerle un enlace para elegir una nueva.',
    noAccounts: 'Esta máquina no tiene cuentas: quien se sienta ante ella lleva la coordinación.',
    already: (name) => `Ha entrado como ${name}.`,
  },
  again: {
    title: 'Su sesión terminó',
    text: 'Entre para seguir. Lo que escribió en esta página sigue ahí.',
    other: 'Soy otra persona',
  },
  first: {
    title: 'La primera persona de coordinación',
    lead: 'Nadie se ha unido todavía a este programa. Quien arrancó el servidor ve un código en su terminal; con él usted lleva la coordinación e invita a los demás.',
    code: 'Código de la terminal',
    codeHint: 'Sirve una vez.',
    submit: 'Llevar la coordinación',
    done: 'Este programa ya tiene a su gente. Entre, o pida una invitación a la coordinación.',
  },
  join: {
    title: (program) => `Unirse a ${program}`,
    titleAgain: 'Elija una contraseña nueva',
    reading: 'Leyendo la invitación …',
    as: (role) => `Se le invita con el papel de ${role}.`,
    farms: (farms) => `Fincas: ${farms}.`,
    again: (name) => `Para ${name}. La contraseña anterior deja de servir y se cierran todas las demás sesiones.`,
    until: (date) => `El enlace vale hasta el ${date}.`,
    submit: 'Unirse',
    submitAgain: 'Usar esta contraseña',
    homeScreen: 'Una vez dentro, la página Más explica cómo poner Duskwatch en su pantalla de inicio.',
    invalid: 'Este enlace ya no vale',
    invalidText: 'Se usó, se retiró o tiene más de 7 días. Pida uno nuevo a la coordinación.',
    signedIn: (name) => `Usted ha entrado como ${name}. Salga antes de unirse como otra persona.`,
  },

  people: {
    title: 'Personas',
    lead: (n) => plural(n, 'persona se ha unido', 'personas se han unido'),
    loading: 'Leyendo quién está aquí …',
    single: {
      title: 'Una máquina, sin cuentas',
      text: 'Quien se sienta ante esta máquina lleva la coordinación, y nadie más puede llegar al programa. Para dejar entrar a otros, arránquelo con cuentas: la terminal muestra entonces un código para la primera persona de coordinación, que invita a los demás.',
      command: 'npx duskwatch serve --accounts',
      network:
        'Para teléfonos y otras máquinas de la red, indique también la dirección en que escucha y ponga delante un proxy con https:',
      networkCommand: 'npx duskwatch serve --accounts --host 0.0.0.0 --origin https://su.direccion',
      keeps: 'Todo lo anotado hasta ahora queda como está.',
    },
    columns: { name: 'Nombre', role: 'Papel', farms: 'Fincas', state: 'Puede entrar', acts: 'Contraseña' },
    you: 'usted',
    allFarms: 'todas',
    noPlaces: 'ninguna',
    farmsOf: (name) => `Fincas de ${name}`,
    roleOf: (name) => `Papel de ${name}`,
    mayOf: (name) => `${name} puede entrar`,
    yes: 'sí',
    no: 'no',
    chooseFarms: 'Elija antes las fincas del nuevo productor y guárdelas.',
    saveFarms: 'Guardar las fincas',
    newPassword: 'Enlace para contraseña nueva',
    newPasswordOf: (name) => `Enlace para una contraseña nueva de ${name}`,
    changed: {
      role: (name, role) => `${name} tiene ahora el papel de ${role}.`,
      farms: (name, farms) => `${name} ve ahora ${farms}.`,
      disabled: (name) => `${name} ya no puede entrar. Lo que escribió se queda.`,
      enabled: (name) => `${name} puede entrar de nuevo.`,
    },
    undo: 'Deshacer',
    ends: 'Un cambio cierra las sesiones de la persona: entra de nuevo y ve lo que ahora le toca.',
    rolesTitle: 'Qué puede hacer cada papel',
    failed: (why) => `No se cambió nada. ${why}`,
  },
  invite: {
    title: 'Invitar a alguien',
    role: 'Con el papel de',
    farms: 'Fincas',
    noFarms: 'Todavía no hay fincas: añada antes parcelas.',
    submit: 'Hacer un enlace',
    made: 'Envíe este enlace a una sola persona. Sirve una vez.',
    madeFor: (name) => `Envíe este enlace a ${name}. Con él elige una contraseña nueva; sirve una vez.`,
    link: 'Enlace',
    copy: 'Copiar el enlace',
    copied: 'Copiado.',
    copyFailed: 'El navegador no permitió copiar: marque el enlace y cópielo a mano.',
    until: (date) => `Vale hasta el ${date}.`,
    onlyNow: 'Solo se muestra ahora.',
  },
  open: {
    title: 'Invitaciones abiertas',
    none: 'No hay ninguna invitación abierta.',
    for: {
      newcomer: (role) => `para alguien nuevo: ${role}`,
      password: (name) => `contraseña nueva de ${name}`,
    },
    by: (name, date) => `de ${name}, vale hasta el ${date}`,
    withdraw: 'Retirar',
    withdrawOf: (what) => `Retirar la invitación ${what}`,
    withdrawn: 'Retirada: el enlace ya no sirve.',
  },
  log: {
    title: 'Qué cambió sobre las personas',
    when: 'Cuándo',
    who: 'Quién',
    what: 'Qué',
    none: 'Nada todavía.',
    actions: {
      'first-person': 'fue la primera persona de coordinación',
      invited: 'hizo una invitación',
      'invitation-withdrawn': 'retiró una invitación',
      joined: 'se unió',
      'new-password': 'tomó una contraseña nueva',
      'role-changed': 'cambió el papel',
      'farms-changed': 'cambió las fincas',
      disabled: 'quitó el permiso de entrar',
      enabled: 'volvió a permitir entrar',
    },
    of: (whom) => `de ${whom}`,
  },

  you: {
    title: 'Usted',
    as: (role) => `Papel: ${role}`,
    signOut: 'Salir',
    everywhere: 'Salir en todas partes',
    everywhereText: 'Cierra sus sesiones en todas las máquinas y teléfonos, también en esta.',
    unsent: (n) =>
      `${plural(n, 'registro suyo espera', 'registros suyos esperan')} en esta máquina; se envía cuando usted vuelva a entrar aquí.`,
    single: 'Quien se sienta ante esta máquina lleva la coordinación; no hay a quién sacar.',
  },
};
