/** Schemas must not try whether code may be made at run time: the security policy would report the attempt. */
import { config } from 'zod/mini'

config({ jitless: true })
