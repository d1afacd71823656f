/** Node, but compiled as for a browser, so that a screen's model behaves as it does on a screen. */
import type { Environment } from 'vitest/runtime'

const screen: Environment = {
  name: 'screen',
  viteEnvironment: 'client',
  setup: () => ({ teardown: () => undefined }),
}

export default screen
