const small = new Set("a an the of to in on at for with and or but so is are was were be been it its it's this that these those i you your my her his their our we she he they me them him us do does did have has had will would can could just really very as by from up out all any some one".split(' '));

/** Small words tie others together and carry no claim by themselves. */
export const isSmallWord = (word: string): boolean => small.has(word);
