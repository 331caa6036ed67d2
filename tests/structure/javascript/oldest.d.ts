// What iOS 15.4 and Chrome 97, the oldest that README.md names, know beyond ES2022: of ES2023 these alone.

interface Array<T> {
  findLast(is: (value: T, place: number, all: T[]) => unknown): T | undefined;
  findLastIndex(is: (value: T, place: number, all: T[]) => unknown): number;
}
