/** What Eleventy hands to a configuration function, cut down to what is used here. */
export interface EleventyConfig {
  addExtension(
    extension: string,
    engine: {
      compile(text: string, path: string): Promise<(data: object) => Promise<string>>;
      compileOptions: { permalink(text: string, path: string): Promise<(data: object) => Promise<string>> };
    },
  ): void;
  setTemplateFormats(formats: string[]): void;
  setDataFileSuffixes(suffixes: string[]): void;
  setUseGitIgnore(used: boolean): void;
  setInputDirectory(folder: string): void;
  setOutputDirectory(folder: string): void;
  setQuietMode(quiet: boolean): void;
  setWatchThrottleWaitTime(waitMs: number): void;
  addWatchTarget(glob: string, options: { resetConfig: boolean }): void;
  addTransform(name: string, change: (content: string) => string): void;
  addGlobalData(name: string, value: () => unknown): void;
  on(event: "eleventy.after", listener: (event: { directories: { output: string } }) => Promise<void>): void;
}
