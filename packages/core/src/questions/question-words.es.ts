import { expectedText, type QuestionWords } from './question-words.ts';

const moths = (value: number | null) => expectedText(value, 'un número desconocido');

export const questionWordsEs: QuestionWords = {
  oddity(question, write) {
    const [first] = question.checks;
    const [trap, on] = [first?.trapId ?? '', first ? write(first.checkedOn) : ''];
    const last = () => write(question.checks.at(-1)!.checkedOn);
    switch (question.kind) {
      case 'unlikely-count':
        return `${trap}, ${on}: ${first!.count}, donde las otras trampas y su propia costumbre hacen esperar cerca de ${moths(first!.expected)}.`;
      case 'columns-swapped':
        return `${trap}, ${on}: ${first!.count} de la especie buscada y ${first!.others} de otras; al revés es mucho más probable.`;
      case 'repeated-count':
        return `${trap}: ${question.value} en ${question.checks.length} visitas seguidas, de ${on} a ${last()}.`;
      case 'same-count-everywhere':
        return `${on}: ${question.value} por igual en ${question.traps} trampas de ${question.farm ?? 'una finca'}.`;
      case 'entered-in-bulk':
        return `${question.author} anotó ${question.checks.length} revisiones de ${question.days} días, de ${on} a ${last()}, en pocos minutos.`;
      case 'rounded-counts':
        return `${question.farm ?? 'Una finca'}: ${question.rounded} de ${question.of} conteos grandes terminan en 0 o 5; lo usual es uno de cada cinco.`;
      case 'silent-trap':
        return `${trap}: nada en ${question.nights} noches desde ${write(question.since)}, en las que otras trampas de su clase capturaron cerca de ${moths(question.expected)} cada una.`;
      case 'loud-trap':
        return `${trap}: ${question.caught} en ${question.nights} noches desde ${write(question.since)}, en las que otras trampas de su clase capturaron cerca de ${moths(question.expected)} cada una.`;
      case 'swapped-traps':
        return `${question.traps.join(' y ')}: desde ${write(question.from)}, cada una captura lo que debería la otra.`;
    }
  },
  hardlyEver: 'Una temporada sana muestra esto con una probabilidad menor que 0.000001.',
  atMost: (probability) => `Una temporada sana muestra esto con una probabilidad de ${probability} como máximo.`,
  asks: {
    'unlikely-count': 'Pregunte a quien revisó si la cifra, la trampa y el día son correctos, y qué se vio allí.',
    'columns-swapped': 'Pregunte a quien revisó si la especie buscada y las otras están en las columnas correctas.',
    'repeated-count': 'Pregunte a quien revisó si cada vez se vació la trampa y se contó de nuevo.',
    'same-count-everywhere': 'Pregunte a quien revisó si se contó cada trampa.',
    'entered-in-bulk': 'Pregunte a quien las anotó de dónde se copiaron las cifras.',
    'rounded-counts':
      'Pregunte a quien revisó si las capturas grandes se cuentan o se estiman: una estimación está bien si se dice que lo es.',
    'silent-trap':
      'Pida a quien revisa que mire el atrayente, la entrada y el lugar de la trampa. Si su lugar es así, responda que está bien: la parcela vuelve a leerse por ella.',
    'loud-trap':
      'Pida a quien revisa que mire el atrayente, lo que se contó como la especie buscada y el lugar de la trampa. Si todo está en orden, responda que está bien.',
    'swapped-traps': 'Pregunte a quien revisó cuál trampa es cuál, y si se movió alguna.',
  },
};
