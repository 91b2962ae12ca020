import type { Question } from '../../src/domain/quality/insulation/questions.ts';
import type { ReadingFault } from '../../src/domain/quality/insulation/reading.ts';
import type { QualityRefusal } from '../../src/domain/quality/refusal.ts';
import type { Remark } from '../../src/domain/quality/remark.ts';
import { END_WORDS } from './quality/end-words.ts';
import { INSULATION_WORDS, READING_WORDS } from './quality/insulation-words.ts';
import { JOINT_WORDS } from './quality/joint-words.ts';
import { PIECE_WORDS } from './quality/piece-words.ts';
import { questionTold } from './quality/question-told.ts';
import { RECORD_WORDS } from './quality/record-words.ts';
import { REMARK_WORDS } from './quality/remark-words.ts';
import { SUPPORT_WORDS } from './quality/support-words.ts';
import { TAP_WORDS } from './quality/tap-words.ts';
import type { ArgsOf, OneOf, Speech, Told, Words, WordsFor } from './quality/told.ts';

export type { Speech, Told } from './quality/told.ts';

const REFUSAL_WORDS: WordsFor<QualityRefusal> = {
  ...RECORD_WORDS,
  ...PIECE_WORDS,
  ...JOINT_WORDS,
  ...SUPPORT_WORDS,
  ...TAP_WORDS,
  ...END_WORDS,
  ...INSULATION_WORDS,
};

/** A refused record in words: what is wrong, the number, and what to do. */
export function refusalWords(refusal: QualityRefusal, say: Speech): Told {
  return speak<ArgsOf<QualityRefusal>, QualityRefusal['code']>(REFUSAL_WORDS, refusal, say);
}

/** A remark beside a record that was taken. */
export function remarkWords(remark: Remark, say: Speech): Told {
  return speak<ArgsOf<Remark>, Remark['code']>(REMARK_WORDS, remark, say);
}

/** A reading that cannot be read. */
export function readingWords(fault: ReadingFault, say: Speech): Told {
  return speak<ArgsOf<ReadingFault>, ReadingFault['code']>(READING_WORDS, fault, say);
}

/** A doubtful figure of a test sheet, as a question. */
export function questionWords(question: Question, say: Speech): Told {
  return questionTold(question, say);
}

function speak<Args, Code extends keyof Args>(
  words: Words<Args>,
  { code, args }: OneOf<Args, Code>,
  say: Speech,
): Told {
  return words[code](args, say);
}
