/** Which screen is shown: the part of the address after `#`, so that the phone's back button goes through them. */
import { useEffect, useState } from 'preact/hooks'

export type Route =
  | { readonly screen: 'list' | 'drafts' | 'settings' }
  | { readonly screen: 'horse' | 'write'; readonly id: string }

export function routeOf(hash: string): Route {
  const [screen, id] = hash.replace(/^#/, '').split('/')
  if ((screen === 'horse' || screen === 'write') && id) return { screen, id: decoded(id) }
  return { screen: screen === 'drafts' || screen === 'settings' ? screen : 'list' }
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text)
  } catch {
    return text
  }
}

export function useRoute(): Route {
  const [route, setRoute] = useState(() => routeOf(location.hash))
  useEffect(() => {
    const change = () => setRoute(routeOf(location.hash))
    addEventListener('hashchange', change)
    return () => removeEventListener('hashchange', change)
  }, [])
  return route
}
