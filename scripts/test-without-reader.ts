/** Node tells the language of its machine as a browser tells its reader's: no test may hang on whose machine it runs. */
Reflect.deleteProperty(globalThis, 'navigator');

export {};
