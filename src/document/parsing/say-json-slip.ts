/** What is wrong with a text, and what to do. */
export interface Words {
  readonly message: string;
  readonly remedy: string;
}

const END: Words = {
  message: 'The text ends before the document does.',
  remedy: 'The file is cut short: copy or send it again, or close the brackets that are open.',
};
const COMMENT: Words = { message: 'JSON has no comments.', remedy: 'Take the comment out.' };
const CURLY = /[\u2018\u2019\u201c\u201d]/;
const QUOTES: Words = {
  message: 'Text stands in straight double quotation marks.',
  remedy: 'Write " for each mark: a word processor has put others in.',
};

/** Where a value should begin. */
export function sayValueSlip(text: string, at: number): Words {
  const sign = text[at];
  if (sign === undefined) return END;
  if (sign === '/') return COMMENT;
  if (sign === "'" || CURLY.test(sign)) return QUOTES;
  if (sign === '}' || sign === ']' || sign === ',') {
    return { message: `A value is missing before ${sign}`, remedy: 'Give the value, or take the last comma out.' };
  }
  const word = wordAt(text, at);
  if (/^[-+.\d]/.test(word)) {
    return {
      message: `"${word}" is not a number of JSON.`,
      remedy: 'Write it like 3048 or 1.5875, with a point and without a plus sign.',
    };
  }
  if (/^(NaN|-?Infinity|undefined|None|True|False)/.test(word)) {
    return {
      message: `"${word}" is not a value of JSON.`,
      remedy: 'Write a number, true, false, or leave the key out.',
    };
  }
  return { message: `"${word}" is not a value of JSON.`, remedy: 'Put text in double quotation marks.' };
}

/** Where a key should begin. */
export function sayKeySlip(text: string, at: number): Words {
  const sign = text[at];
  if (sign === undefined) return END;
  if (sign === '/') return COMMENT;
  if (sign === "'" || CURLY.test(sign)) return QUOTES;
  if (sign === '}') return { message: 'A comma stands before }', remedy: 'Take the last comma out.' };
  if (sign === ',') return { message: 'Two commas follow each other.', remedy: 'Take one out.' };
  return {
    message: `A key was expected here, not ${wordAt(text, at)}`,
    remedy: 'Put each key in double quotation marks.',
  };
}

/** Where a comma, a colon or a closing bracket should stand. */
export function sayMarkSlip(text: string, at: number, mark: ':' | '}' | ']'): Words {
  const sign = text[at];
  if (sign === undefined) return END;
  if (sign === '/') return COMMENT;
  if (mark === ':')
    return { message: 'A colon is missing after the key.', remedy: 'Write : between a key and its value.' };
  if (sign === '}' || sign === ']') {
    return {
      message: `${sign} closes what was not opened here.`,
      remedy: `Close with ${mark} first, or take this one out.`,
    };
  }
  return {
    message: `A comma or ${mark} is missing before ${wordAt(text, at)}`,
    remedy: `Write a comma, or close with ${mark}`,
  };
}

/** Inside a text in quotation marks. */
export function sayStringSlip(text: string, at: number): Words {
  if (at >= text.length) return { message: 'This text is never closed.', remedy: 'Write the closing quotation mark.' };
  if (text[at] === '\\') {
    return {
      message: 'A backslash stands before a character that it does not go with.',
      remedy: 'Write \\\\ for a backslash.',
    };
  }
  return {
    message: 'A line break or a tab stands inside a text.',
    remedy: 'Write \\n or \\t, or close the quotation marks.',
  };
}

function wordAt(text: string, at: number): string {
  const word = /^[^\s,:{}[\]]{1,40}/.exec(text.slice(at, at + 40))?.[0];
  return word ?? text.slice(at, at + 1);
}
