import type { BuswayTypeDocument, ExtraDocument, JobDocument, LabourBookDocument } from './job-document.ts';

/** `T` of which `Key` cannot be read and cannot be set. */
type Without<T, Key extends keyof T> = Omit<T, Key> & { [K in Key]?: never };

/** A job document without price, rate or bid, fit to leave the office. It still is a job document. */
export type UnpricedDocument = Without<JobDocument, 'bid'> & {
  buswayTypes: Without<BuswayTypeDocument, 'prices'>[];
  extras?: Without<ExtraDocument, 'price'>[] | undefined;
  labourBook?: Without<LabourBookDocument, 'crew' | 'overtime'> | undefined;
};

/**
 * The document without money: prices of every type and extra, the crew with its rates and overtime, and the bid are left out. Hours,
 * quantities and everything that is built stay. Text that people wrote, such as notes, is not read for figures.
 */
export function withoutMoney(document: JobDocument): UnpricedDocument {
  const { bid: _bid, buswayTypes, extras, labourBook, ...rest } = document;
  return {
    ...rest,
    buswayTypes: buswayTypes.map(({ prices: _prices, ...type }) => type),
    ...(extras && { extras: extras.map(({ price: _price, ...extra }) => extra) }),
    ...(labourBook && { labourBook: withoutRates(labourBook) }),
  };
}

/** What a crew is paid: its rates, and what overtime adds to them. */
export function withoutRates({
  crew: _crew,
  overtime: _overtime,
  ...book
}: LabourBookDocument): Without<LabourBookDocument, 'crew' | 'overtime'> {
  return book;
}
