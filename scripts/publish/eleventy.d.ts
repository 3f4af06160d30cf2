/** The few methods of Eleventy 3 that this program calls; the package brings no types. */
declare module "@11ty/eleventy" {
  import type { EleventyConfig } from "./eleventyConfig.ts";

  export interface EleventyOptions {
    /** "" reads no configuration file */
    configPath?: string;
    quietMode?: boolean;
    runMode?: "build" | "serve";
    config?: (eleventyConfig: EleventyConfig) => void | Promise<void>;
  }

  export default class Eleventy {
    constructor(input: string, output: string, options: EleventyOptions);
    init(): Promise<void>;
    disableLogger(): void;
    write(): Promise<unknown>;
    watch(): Promise<unknown>;
    serve(port: number): Promise<unknown>;
    stopWatch(): Promise<unknown>;
  }
}
