/** Set up before every file that uses fast-check: the seed comes from the vitest project. */
import { configureGlobal } from 'fast-check'

configureGlobal({ seed: Number(process.env['FC_SEED']) })
